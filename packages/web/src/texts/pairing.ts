/** Words of the page on which other devices are let in. */
export const pairingTexts = {
  title: 'Other devices',
  intro: 'A phone beside the mount or a second screen can show the same pages, over your own network only.',
  closed:
    'The station listens to this computer only. To let other devices in, stop it and start it with `coreward station --lan`.',
  make: 'Make a pairing code',
  makeAnother: 'Make another code',
  code: 'Pairing code',
  expires: (time: string): string => `It works once, until ${time}.`,
  open: 'Open on the other device one of',
  scan: 'or scan this with its camera:',
  picture: 'The first address as a QR code',
  certificate:
    'Its browser will warn that it does not know the certificate: the station has made it itself. Compare the address before you go on.',
  devices: 'Devices that are let in',
  none: 'None besides this computer.',
  paired: (time: string): string => `paired ${time}`,
  seen: (time: string): string => `last seen ${time}`,
  you: 'this device',
  revoke: 'Let in no longer',
  revokeLabel: (name: string): string => `Let in no longer: ${name}`,
  onlyThere: 'Codes are made on the station’s own computer.',
  failed: 'The station does not answer.',
  pair: {
    title: 'Pair this device',
    why: 'The station does not know this device and shows it nothing: it was never paired, or is let in no longer.',
    whyHere:
      'The station does not know this page. If this is the station’s own computer, loading it again is enough.',
    steps: [
      'On the station’s own computer, open Coreward and go to “devices”.',
      'Press “Make a pairing code”. A code lets in one device, within five minutes.',
      'Type it here, or scan the picture beside it with this device’s camera.',
    ],
    code: 'pairing code',
    name: 'what this device is called',
    namePlaceholder: 'phone beside the mount',
    act: 'Pair',
    noCode: 'No code is typed yet. Type the eight signs that the station shows.',
    after:
      'Then this page opens. What this device changed before and the station has not got is sent after that.',
    reloadAct: 'Load again',
  },
} as const;
