/** Whether the command line and the editor are there and younger than all they are made of. */
export function isBuilt(): boolean;
