import { gaugeNamed, type Measured, measured, type Picture, Refusal } from '@coreward/bench';
import { expose } from 'comlink';
import { openPicture } from './open-picture.ts';
import type { GaugeQuestion, GaugeWorker } from './protocol.ts';

/** The last picture: a setting that is changed does not open it again. */
const opened = new Map<File, Picture>();
let openedName = '';

const worker: GaugeWorker = {
  async measure({ gauge: name, sheet, picture: file, file: called }: GaugeQuestion): Promise<Measured> {
    const gauge = gaugeNamed(name);
    if (gauge === null) throw new Error(`no gauge ${name}`);
    try {
      return measured(gauge, sheet, file === null ? null : await pictureOf(file), called);
    } catch (error) {
      if (error instanceof Refusal) return { kind: 'refused', refused: error.parts };
      throw error;
    }
  },
};

async function pictureOf(file: File): Promise<Picture> {
  const name = `${file.name} ${file.size} ${file.lastModified}`;
  const [before] = opened.values();
  if (before !== undefined && name === openedName) return before;
  const picture = await openPicture(file);
  opened.clear();
  opened.set(file, picture);
  openedName = name;
  return picture;
}

expose(worker);
