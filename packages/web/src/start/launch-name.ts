import { fieldAt, launchFields, Refusal } from '@coreward/bench';

/** What a launch document calls itself. */
export function launchName(text: string): string {
  try {
    const field = fieldAt(launchFields(text), ['name']);
    return field?.kind === 'name' && field.written !== null ? field.written : 'unnamed launch';
  } catch (error) {
    if (error instanceof Refusal) return 'unnamed launch';
    throw error;
  }
}
