export function buildCommandLine(folder: string): Promise<void>;
