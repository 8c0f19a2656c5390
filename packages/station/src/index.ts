export { BenchBook } from './bench-book/bench-book.ts';
export { bookFile } from './bench-book/open-database.ts';
export { dataFolder, type Surroundings } from './data-folder.ts';
export type { Archive } from './exchange/archive.ts';
export { archiveFiles, archiveFrom, archiveIn, indexFile } from './exchange/archive-files.ts';
export { exportBook } from './exchange/export-book.ts';
export { type Imported, importBook } from './exchange/import-book.ts';
export { type LanEntrance, type Station, type StationOptions, startStation, usualPort } from './station.ts';
export type { World } from './world.ts';
