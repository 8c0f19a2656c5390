import { idText, timeText } from './written.ts';
import { z } from './zod.ts';

/** The code on the station's screen: eight letters and digits that are not mistaken for each other. */
export const pairingCode = z.string().check(z.regex(/^[2-9A-HJ-NP-Z]{8}$/u));

/** What a device calls itself, for the list of devices: "phone beside the mount". */
export const deviceName = z
  .string()
  .check(z.minLength(1), z.maxLength(60), z.regex(/^[^\p{Cc}\p{Surrogate}]*$/u));

/** Asks to be let in from another machine; the answer sets its cookie. The code is burnt by it. */
export const pairRequest = z.strictObject({ code: pairingCode, name: deviceName });
export type PairRequest = z.infer<typeof pairRequest>;

/** A paired device. */
export const keptDevice = z.strictObject({
  id: idText,
  name: deviceName,
  paired: timeText,
  /** When it last asked for anything, to within some minutes. */
  seen: timeText,
});
export type KeptDevice = z.infer<typeof keptDevice>;

/** The machines that were paired. */
export const devicesAnswer = z.strictObject({
  devices: z.array(keptDevice),
  /** Which of them asks; null on the station's own computer. */
  you: z.nullable(idText),
});
export type DevicesAnswer = z.infer<typeof devicesAnswer>;

/** A fresh pairing code, in place of any earlier one; only for the station's own computer. */
export const pairingAnswer = z.strictObject({
  code: pairingCode,
  /** When it stops working, used or not. */
  expires: timeText,
  /** Where another machine finds the station: `https://192.168.0.7:5209/pair#CODE`; one for each network. */
  addresses: z.array(z.string()),
  /** The first address as a QR code, SVG. */
  picture: z.string(),
});
export type PairingAnswer = z.infer<typeof pairingAnswer>;
