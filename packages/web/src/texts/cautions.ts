/** Words of the pages on cautions, and of the marks on the light line. What can hurt is told by bench. */
export const cautionTexts = {
  title: (name: string): string => `Cautions of “${name}”`,
  stepsTitle: (name: string): string => `Step by step with “${name}”`,
  back: 'To the launch',
  toCautions: 'all cautions',
  toSteps: 'cautions, step by step',
  print: 'Print',
  list: 'What can hurt, worst first',
  doNow: 'Now:',
  figures: 'Its numbers',
  folded: ({ people, parts }: { readonly people: number; readonly parts: number }): string =>
    `${people + parts} more where no limit is passed: ${people} of people, ${parts} of parts only`,
  evidence: 'How it was computed, and how sure that is',
  questions: 'What this bench cannot tell',
  questionsIntro: (laser: string): string =>
    `Answers are kept in the bench book for ${laser}, in whatever launch it stands, and count at once. Until then the worse is counted.`,
  untilThen: (what: string): string => `Until then ${what}.`,
  answered: (answer: string, time: string): string => `Answered ${time}: ${answer}`,
  withdraw: 'Withdraw',
  withdrawLabel: (what: string): string => `Withdraw: ${what}`,
  answerLabel: (question: string): string => `answer to: ${question}`,
  give: 'Answer',
  like: (examples: string): string => `such as ${examples}`,
  eyewear: 'The light, eyewear, and the power to align with',
  happened: 'When it has happened',
  unreadable: 'Nothing can be said about this launch',
  whereMended:
    'To the launch: each part is changed at its tag on the light line; what lies between laser and lens, mirrors too, at the laser’s.',
  waiting: 'Asking the station …',
  noBook:
    'The station does not answer: what was answered and read before is with it, and the worse is counted.',
  notKept: 'Not kept: the station does not answer. Try again.',
  marks: 'Places that can hurt',
  mark: (level: string, count: number): string => (count === 1 ? level : `${level}, ${count}`),
  markLabel: (level: string, place: string, count: number): string =>
    `${level}: ${place}, ${count === 1 ? '1 caution' : `${count} cautions`}`,
  close: 'Close',
  invisible: 'invisible light',
  stepsIntro:
    'Read each step before you do it and tick it off. It is asked again when power, wavelength, lens or ends are others.',
  read: 'I have read this for this bench',
  readAt: (time: string): string => `Read ${time}.`,
  readForAnother: (time: string): string =>
    `Read ${time}, for another power, wavelength, lens or other ends: read it again.`,
  notRead: 'Not read yet.',
  numbers: 'With the numbers of this bench',
  hurts: 'What can hurt here, worst first',
} as const;
