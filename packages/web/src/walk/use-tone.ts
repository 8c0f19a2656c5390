import { bestTone, toneOfReading } from '@coreward/bench';
import { useEffect, useRef, useState } from 'react';

interface Voices {
  readonly context: AudioContext;
  readonly light: OscillatorNode;
}

/** Loudness of the voice that follows the light, and of the steady one, of 1. */
const [lightGain, bestGain] = [0.12, 0.03] as const;
/** Time in which the pitch follows, s: no clicks, and no delay that a hand would feel. */
const glide = 0.03;

/** A tone that follows the light, beside a steady one for the best so far. It begins only after a press, as browsers ask. */
export function useTone(reading: number | null, best: number | null, floor: number | null) {
  const voices = useRef<Voices | null>(null);
  const [isOn, setOn] = useState(false);
  useEffect(() => {
    const own = voices.current;
    if (own === null || !isOn || reading === null) return;
    const tone = toneOfReading(reading, best, floor);
    own.light.frequency.setTargetAtTime(tone, own.context.currentTime, glide);
  }, [reading, best, floor, isOn]);
  useEffect(
    () => () => {
      void voices.current?.context.close();
      voices.current = null;
    },
    [],
  );
  const press = (): void => {
    const own = voices.current ?? begun();
    voices.current = own;
    void (isOn ? own.context.suspend() : own.context.resume());
    setOn(!isOn);
  };
  return { isOn, press };
}

function begun(): Voices {
  const context = new AudioContext();
  const voice = (frequency: number, loudness: number): OscillatorNode => {
    const gain = new GainNode(context, { gain: loudness });
    const oscillator = new OscillatorNode(context, { frequency, type: 'triangle' });
    oscillator.connect(gain).connect(context.destination);
    oscillator.start();
    return oscillator;
  };
  voice(bestTone, bestGain);
  return { context, light: voice(bestTone, lightGain) };
}
