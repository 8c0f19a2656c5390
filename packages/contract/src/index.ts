export * from './access.ts';
export * from './any-json.ts';
export * from './entries.ts';
export * from './instruments.ts';
export * from './launches.ts';
export * from './live.ts';
export * from './parts.ts';
export * from './readings.ts';
export * from './refused.ts';
export * from './route.ts';
export * from './routes.ts';
export * from './settings.ts';
export * from './status.ts';
export * from './walk.ts';
export {
  documentText,
  idText,
  mostDocumentCharacters,
  nameText,
  sequenceNumber,
  timeText,
  versionFacts,
  versionNumber,
  writeKeys,
} from './written.ts';
export { z } from './zod.ts';
