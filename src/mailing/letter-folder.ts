// Nothing arrives; the name of the folder whose letters may be mailed leaves.
export const letterFolder = 'letters';

/** All letters in one file, as `ironleaf print` leaves it. */
export const printName = 'print.pdf';
