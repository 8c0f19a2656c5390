import { columnSeparators, type LineFormat, meterUnits } from '@coreward/bench';
import { reading, readingUnit } from './readings.ts';
import { refusalParts } from './refused.ts';
import { idText, nameText } from './written.ts';
import { z } from './zod.ts';

/**
 * Where readings come from. `typed`, `by-eye` and `camera` are posted by a page; `serial-line` and `scpi` are opened by the
 * station; `replay` is a log from before; `practice` a simulated bench.
 */
export const instrumentKinds = [
  'typed',
  'by-eye',
  'camera',
  'serial-line',
  'scpi',
  'replay',
  'practice',
] as const;
/** What an instrument can be. */
export const instrumentKind = z.enum(instrumentKinds);
export type InstrumentKind = z.infer<typeof instrumentKind>;

/** How a device's lines are read. */
export const lineFormat: z.ZodMiniType<LineFormat> = z.strictObject({
  separator: z.enum(columnSeparators),
  decimal: z.enum(['point', 'comma']),
  column: z.int().check(z.gte(0), z.lte(255)),
  unit: z.enum(meterUnits),
});

/** A serial port by its name in the system: `/dev/ttyUSB0`, `COM3`. */
export const serialLink = z.strictObject({
  by: z.literal('serial'),
  path: z.string().check(z.regex(/^(?!.*\.\.)(\/dev\/[\w./-]{1,120}|COM\d{1,3})$/u)),
  baudRate: z.int().check(z.gte(50), z.lte(4_000_000)),
});
export type SerialLink = z.infer<typeof serialLink>;

/** A device in the network. */
export const tcpLink = z.strictObject({
  by: z.literal('tcp'),
  host: z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9.:-]{0,252}$/u)),
  port: z.int().check(z.gte(1), z.lte(65_535)),
});
export type TcpLink = z.infer<typeof tcpLink>;

const deviceLink = z.discriminatedUnion('by', [serialLink, tcpLink]);
export type DeviceLink = z.infer<typeof deviceLink>;

/** One query, as it is sent: printable ASCII on one line. */
const queryText = z.string().check(z.regex(/^[\x20-\x7e]{1,200}$/u));

/** Characters a log to be replayed may have. */
export const mostLogCharacters = 1_500_000;

/** What makes an instrument of each kind. */
export const instrumentSetup = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('typed'), unit: z.enum(['W', 'V', 'A', 'relative']) }),
  z.strictObject({ kind: z.literal('by-eye') }),
  z.strictObject({ kind: z.literal('camera') }),
  z.strictObject({ kind: z.literal('serial-line'), link: serialLink, format: lineFormat }),
  z.strictObject({
    kind: z.literal('scpi'),
    link: deviceLink,
    query: queryText,
    unit: z.enum(meterUnits),
    /** From one query to the next, ms. */
    every: z.number().check(z.gte(5), z.lte(3_600_000)),
  }),
  z.strictObject({
    kind: z.literal('replay'),
    /** A table, one reading a line: a time in seconds and the reading. */
    log: z.string().check(z.minLength(1), z.maxLength(mostLogCharacters)),
    unit: z.enum(meterUnits),
    /** 1: as fast as it was recorded. */
    speed: z.number().check(z.gte(0.01), z.lte(1_000)),
  }),
  z.strictObject({
    kind: z.literal('practice'),
    /** The launch whose bench is simulated. */
    launch: idText,
    seed: z.int().check(z.gte(0), z.lte(2 ** 32 - 1)),
  }),
]);
export type InstrumentSetup = z.infer<typeof instrumentSetup>;

/**
 * How an instrument is: readings come; it is silent and will go on by itself; nobody wants readings of it; or somebody must
 * do something (`trouble` says what).
 */
export const instrumentState = z.enum(['reading', 'gap', 'off', 'trouble']);
export type InstrumentState = z.infer<typeof instrumentState>;

/** An instrument as it is now; values in `unit`. */
export const instrumentDescription = z.strictObject({
  id: idText,
  name: nameText,
  kind: instrumentKind,
  unit: readingUnit,
  state: instrumentState,
  /** Why it is silent; null if there is nothing to say. */
  trouble: z.nullable(refusalParts),
  /** Readings a second, lately; null before there are any. */
  rate_Hz: z.nullable(z.number()),
  /** Standard deviation of a single reading, lately, slow changes left out; null before there are enough. */
  noise: z.nullable(z.number()),
  /** The reading with the beam blocked; null: nobody has said. */
  floor: z.nullable(z.number()),
  /** The reading from which on it is at its upper end; null: not known. */
  saturation: z.nullable(z.number()),
  lastReading: z.nullable(reading),
});
export type InstrumentDescription = z.infer<typeof instrumentDescription>;

/** Those in use, by name. */
export const instrumentsAnswer = z.strictObject({ instruments: z.array(instrumentDescription) });
export type InstrumentsAnswer = z.infer<typeof instrumentsAnswer>;

/** With what makes it. */
export const instrumentAnswer = z.strictObject({
  instrument: instrumentDescription,
  setup: instrumentSetup,
});
export type InstrumentAnswer = z.infer<typeof instrumentAnswer>;

/**
 * A new instrument, or changes to one; kind and unit stay, because its readings go on. A new one is off. One that opens
 * a port or an address is written and switched on only from the station's own computer.
 */
export const writeInstrument = z.strictObject({
  name: nameText,
  setup: instrumentSetup,
  floor: z.nullable(z.number()),
  saturation: z.nullable(z.number()),
});
export type WriteInstrument = z.infer<typeof writeInstrument>;

/** On or off; it stays so through a restart of the station. */
export const switchInstrument = z.strictObject({ on: z.boolean() });
export type SwitchInstrument = z.infer<typeof switchInstrument>;

/** Serial ports of the station's computer. */
export const portsAnswer = z.strictObject({
  ports: z.array(z.strictObject({ path: z.string(), label: z.string() })),
});
export type PortsAnswer = z.infer<typeof portsAnswer>;

/** Listens to a device for a moment, or asks it who it is, before it is made an instrument. */
export const tryDevice = z.discriminatedUnion('speaks', [
  z.strictObject({ speaks: z.literal('lines'), link: serialLink }),
  z.strictObject({ speaks: z.literal('scpi'), link: deviceLink }),
]);
export type TryDevice = z.infer<typeof tryDevice>;

/** What came of it. */
export const triedDevice = z.discriminatedUnion('speaks', [
  z.strictObject({
    speaks: z.literal('lines'),
    /** As they came, control characters shown; tabs stay. */
    lines: z.array(z.string()),
    /** How they would be read; null if nothing in them looks like a reading. */
    format: z.nullable(lineFormat),
    /** The last line so read, SI. */
    value: z.nullable(z.number()),
  }),
  z.strictObject({
    speaks: z.literal('scpi'),
    /** What it answered to `*IDN?`; null if nothing. */
    identity: z.nullable(z.string()),
    /** The query that brought a number; null if none did. */
    query: z.nullable(z.string()),
    /** That number, as the device counts. */
    value: z.nullable(z.number()),
  }),
]);
export type TriedDevice = z.infer<typeof triedDevice>;

/** What the live channel tells of instruments. Nothing of it has a sequence number: a page that comes back asks anew. */
export const instrumentMessages = [
  /** One has changed its state, or at times its rate and noise; or there is a new one. */
  z.strictObject({ type: z.literal('instrument'), instrument: instrumentDescription }),
  z.strictObject({ type: z.literal('instrument gone'), id: idText }),
  /** Readings as they come, in their order, some ten times a second; the latest is the last. */
  z.strictObject({ type: z.literal('readings'), instrument: idText, readings: z.array(reading) }),
] as const;
