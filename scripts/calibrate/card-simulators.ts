import { cardPattern, drawCard, drawnPicture, seenAt } from './card-pictures.ts';
import { between, readings, type Simulator } from './simulated.ts';

export const cardSimulators: readonly Simulator[] = [
  cards('scale to ±1 %, camera up to 20° aslant and nobody told', false),
  cards('corners of a rectangle to a pixel, its sides to ±1 %, camera up to 20° aslant', true),
];

function cards(what: string, withCorners: boolean): Simulator {
  return {
    gauge: 'card-offset',
    what: `8 bits, sRGB, speckle, uneven card; spots of 0.8 to 4 mm up to 3 mm apart; ${what}`,
    counted: ['horizontalOffset_right_m', 'verticalOffset_up_m'],
    draw: (random, normal) => {
      const { card, forward, reverse } = drawCard(random);
      const pattern = cardPattern(card, random);
      const off = between(random, 0.99, 1.01);
      const half = [4.2e-3, 3.1e-3] as const;
      const corners = [
        [-1, 1],
        [1, 1],
        [1, -1],
        [-1, -1],
      ].map(([x, y]) => {
        const [px, py] = seenAt(card, half[0] * x!, half[1] * y!);
        return `${(px + 0.6 * normal()).toFixed(2)},${(py + 0.6 * normal()).toFixed(2)}`;
      });
      const words: Readonly<Record<string, string>> = withCorners
        ? {
            corners: corners.join(' '),
            rectangle: `${(2e3 * half[0] * off).toFixed(4)} mm x ${(2e3 * half[1] * off).toFixed(4)} mm`,
          }
        : { scale: `${((card.pixelsPerMetre / 1e3) * off).toFixed(5)} px/mm` };
      return {
        readings: readings({
          words,
          picture: drawnPicture(card, [forward], pattern, random),
          reversePicture: drawnPicture(card, [reverse], pattern, random),
        }),
        truth: {
          horizontalOffset_right_m: forward.x - reverse.x,
          verticalOffset_up_m: forward.y - reverse.y,
        },
      };
    },
  };
}
