// The clinic's form arrives, and stays on this device if the user wants; nothing else may ever be kept.
import { type ClinicForm, emptyClinic } from './desk.js';

const drawer = 'ironleaf-clinic';

/** The details kept on this device, or null. A browser that keeps nothing is no fault. */
export function rememberedClinic(): ClinicForm | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(drawer) ?? 'null');
    return kept === null || typeof kept !== 'object' ? null : { ...emptyClinic, ...kept };
  } catch {
    return null;
  }
}

/** Keeps the clinic's details, or forgets them. */
export function rememberClinic(form: ClinicForm | null): void {
  try {
    if (form === null) localStorage.removeItem(drawer);
    else localStorage.setItem(drawer, JSON.stringify(form));
  } catch {
    // Private windows may refuse; nothing depends on it.
  }
}
