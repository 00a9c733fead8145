// Imported before any schema is made: zod walks each schema, and writes no program for it.
import { z } from 'zod';

// A schema reads a file or two before the program ends, which takes less than writing code; the page may run none.
z.config({ jitless: true });
