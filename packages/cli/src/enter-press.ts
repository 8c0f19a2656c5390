import {
  liveText,
  type Pressed,
  pressInTurn,
  type TurnNow,
  turnSaid,
  type WalkAnswer,
  type WalkMeter,
  type WalkStep,
} from '@coreward/bench';

/** What Enter comes to. */
export type EnterPress =
  | { readonly do: 'answer'; readonly answer: WalkAnswer }
  | { readonly do: 'say'; readonly text: string; readonly pressed: Pressed };

/** Enter at a live step: the answer it takes, or what is said first. `clock` in ms, the shell's. */
export function pressEnter(
  pressed: Pressed,
  turn: TurnNow,
  step: WalkStep,
  meter: WalkMeter,
  clock: number,
): EnterPress {
  const came = pressInTurn(pressed, turn, step, clock);
  switch (came.do) {
    case 'answer':
      return came;
    case 'nothing':
      return { do: 'say', text: 'There is nothing to take yet.', pressed };
    case 'ask': {
      const { insteadOf } = turnSaid(turn, step, meter);
      const takes = came.reading === null ? 'to go on' : `to take ${liveText(came.reading, meter)}`;
      const text = `${insteadOf ?? ''} Press Enter again ${takes} all the same.`.trim();
      return { do: 'say', text, pressed: came.pressed };
    }
    case 'before': {
      const reading = came.reading === null ? '–' : liveText(came.reading, meter);
      const text = `Taken as the reading before: ${reading}. Do it, and press Enter again.`;
      return { do: 'say', text, pressed: came.pressed };
    }
  }
}
