// Which way a script runs; a word of its own because the letter and its rendering share it.

export type Direction = 'ltr' | 'rtl';
