import { devicesAnswer, keptDevice, pairingAnswer, pairRequest } from './access.ts';
import { entriesAnswer, entriesQuery, keptEntry, writeEntry } from './entries.ts';
import {
  instrumentAnswer,
  instrumentsAnswer,
  portsAnswer,
  switchInstrument,
  triedDevice,
  tryDevice,
  writeInstrument,
} from './instruments.ts';
import { keptLaunch, launchesAnswer, launchVersionsAnswer, writeLaunch } from './launches.ts';
import { keptPart, partsAnswer, partVersionsAnswer, writePart } from './parts.ts';
import { postedReadings, postReadings, readingsAnswer, readingsQuery } from './readings.ts';
import type { Route } from './route.ts';
import { keptSettings, writeSettings } from './settings.ts';
import { statusAnswer } from './status.ts';
import {
  beginWalk,
  blockBeam,
  chooseReads,
  handDoes,
  meterAnswer,
  turnScrew,
  walkStands,
  writeWalkAct,
} from './walk.ts';
import { z } from './zod.ts';

const asks = { query: null, request: null } as const;

/**
 * Everything that can be asked of the station; both sides take their types from here. A question that is not answered
 * with its `answer` is answered with a `refusedAnswer`.
 */
export const routes = {
  status: { method: 'GET', path: '/api/status', ...asks, answer: statusAnswer },

  launches: { method: 'GET', path: '/api/launches', ...asks, answer: launchesAnswer },
  launch: { method: 'GET', path: '/api/launches/:id', ...asks, answer: keptLaunch },
  writeLaunch: {
    method: 'PUT',
    path: '/api/launches/:id',
    query: null,
    request: writeLaunch,
    answer: keptLaunch,
  },
  launchVersions: {
    method: 'GET',
    path: '/api/launches/:id/versions',
    ...asks,
    answer: launchVersionsAnswer,
  },
  launchVersion: { method: 'GET', path: '/api/launches/:id/versions/:version', ...asks, answer: keptLaunch },

  parts: { method: 'GET', path: '/api/parts', ...asks, answer: partsAnswer },
  part: { method: 'GET', path: '/api/parts/:id', ...asks, answer: keptPart },
  writePart: { method: 'PUT', path: '/api/parts/:id', query: null, request: writePart, answer: keptPart },
  partVersions: { method: 'GET', path: '/api/parts/:id/versions', ...asks, answer: partVersionsAnswer },
  partVersion: { method: 'GET', path: '/api/parts/:id/versions/:version', ...asks, answer: keptPart },

  entries: { method: 'GET', path: '/api/entries', query: entriesQuery, request: null, answer: entriesAnswer },
  writeEntry: { method: 'POST', path: '/api/entries', query: null, request: writeEntry, answer: keptEntry },

  settings: { method: 'GET', path: '/api/settings', ...asks, answer: keptSettings },
  writeSettings: {
    method: 'PUT',
    path: '/api/settings',
    query: null,
    request: writeSettings,
    answer: keptSettings,
  },

  /** The walk that goes on at a launch. */
  walk: { method: 'GET', path: '/api/launches/:id/walk', ...asks, answer: walkStands },
  beginWalk: {
    method: 'POST',
    path: '/api/launches/:id/walk',
    query: null,
    request: beginWalk,
    answer: walkStands,
  },
  /** By the name of the walk. */
  writeWalkAct: {
    method: 'POST',
    path: '/api/walks/:id/acts',
    query: null,
    request: writeWalkAct,
    answer: walkStands,
  },
  chooseReads: {
    method: 'POST',
    path: '/api/walks/:id/reads',
    query: null,
    request: chooseReads,
    answer: walkStands,
  },
  turnScrew: {
    method: 'POST',
    path: '/api/walks/:id/turns',
    query: null,
    request: turnScrew,
    answer: meterAnswer,
  },
  blockBeam: {
    method: 'POST',
    path: '/api/walks/:id/beam',
    query: null,
    request: blockBeam,
    answer: meterAnswer,
  },
  handDoes: {
    method: 'POST',
    path: '/api/walks/:id/hand',
    query: null,
    request: handDoes,
    answer: walkStands,
  },

  /** Those in use, by name. */
  instruments: { method: 'GET', path: '/api/instruments', ...asks, answer: instrumentsAnswer },
  instrument: { method: 'GET', path: '/api/instruments/:id', ...asks, answer: instrumentAnswer },
  writeInstrument: {
    method: 'PUT',
    path: '/api/instruments/:id',
    query: null,
    request: writeInstrument,
    answer: instrumentAnswer,
  },
  /** Switches it off and takes it out of the list; its readings stay in the bench book. */
  putInstrumentAway: { method: 'DELETE', path: '/api/instruments/:id', ...asks, answer: instrumentsAnswer },
  switchInstrument: {
    method: 'POST',
    path: '/api/instruments/:id/switch',
    query: null,
    request: switchInstrument,
    answer: instrumentAnswer,
  },
  postReadings: {
    method: 'POST',
    path: '/api/instruments/:id/readings',
    query: null,
    request: postReadings,
    answer: postedReadings,
  },
  /** Also those of an instrument that was put away. */
  readings: {
    method: 'GET',
    path: '/api/instruments/:id/readings',
    query: readingsQuery,
    request: null,
    answer: readingsAnswer,
  },
  /** Answered only on the station's own computer, as is the next. */
  ports: { method: 'GET', path: '/api/ports', ...asks, answer: portsAnswer },
  tryDevice: { method: 'POST', path: '/api/ports/try', query: null, request: tryDevice, answer: triedDevice },

  /** Everything in the bench book as one JSON document, the form of `coreward export`. */
  export: { method: 'GET', path: '/api/export', ...asks, answer: z.looseObject({ coreward: z.literal(1) }) },

  /** The one question that an unpaired device may ask. */
  pair: { method: 'POST', path: '/api/pair', query: null, request: pairRequest, answer: keptDevice },
  /** A fresh code; answered only on the station's own computer, and only with `--lan`. */
  makePairing: { method: 'POST', path: '/api/pairing', ...asks, answer: pairingAnswer },
  devices: { method: 'GET', path: '/api/devices', ...asks, answer: devicesAnswer },
  /** Lets a device in no longer, at once. A paired device may revoke only itself. */
  revokeDevice: { method: 'DELETE', path: '/api/devices/:id', ...asks, answer: devicesAnswer },
} as const satisfies { readonly [name: string]: Route };

/** The table as a type, from which both sides take theirs. */
export type Routes = typeof routes;
export type RouteName = keyof Routes;
