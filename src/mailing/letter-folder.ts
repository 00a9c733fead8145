// Nothing arrives; the name of the folder whose letters may be mailed leaves.
export const letterFolder = 'letters';
