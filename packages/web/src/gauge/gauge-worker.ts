import { gaugeNamed, type Measured, measured, type Picture, Refusal } from '@coreward/bench';
import { expose } from 'comlink';
import { openPicture } from './open-picture.ts';
import type { GaugeQuestion, GaugeWorker } from './protocol.ts';

/** The last pictures by name: a setting that is changed does not open them again. */
const opened = new Map<string, Picture>();

const worker: GaugeWorker = {
  async measure({ gauge: name, sheet, picture, reverse, file: called }: GaugeQuestion): Promise<Measured> {
    const gauge = gaugeNamed(name);
    if (gauge === null) throw new Error(`no gauge ${name}`);
    try {
      forgetAllBut([picture, reverse]);
      const [first, second] = [await pictureOf(picture), await pictureOf(reverse)];
      return measured(gauge, sheet, first, called, second);
    } catch (error) {
      if (error instanceof Refusal) return { kind: 'refused', refused: error.parts };
      throw error;
    }
  },
};

async function pictureOf(file: File | null): Promise<Picture | null> {
  if (file === null) return null;
  const picture = opened.get(nameOf(file)) ?? (await openPicture(file));
  opened.set(nameOf(file), picture);
  return picture;
}

const nameOf = ({ name, size, lastModified }: File): string => `${name} ${size} ${lastModified}`;

function forgetAllBut(files: readonly (File | null)[]): void {
  const names = files.map((file) => (file === null ? '' : nameOf(file)));
  for (const name of opened.keys()) if (!names.includes(name)) opened.delete(name);
}

expose(worker);
