import type { JSX } from 'react';
import { Arrow, Card, Fibre, Laser, Light, Meter, Ruler } from './pieces.tsx';

/** Drawings of the gauges of fibre and detector; pure, no sizes but places on their paper. */

export const Cone = (): JSX.Element => (
  <>
    <Fibre d="M2 48H70" />
    <Light along={[70, 200]} half={[1, 32]} />
    <Card x={200} from={8} to={88} />
    <Ruler from={12} to={84} across={206} upright />
  </>
);

/** A fibre's end, and the patterns it may show: LP01, LP11, LP21, LP02. */
export const Patterns = (): JSX.Element => (
  <>
    <Fibre d="M2 48H36" />
    <Light along={[36, 64]} half={[1, 16]} />
    <path className="part" d="M70 28h40v40h-40ZM114 28h40v40h-40ZM158 28h40v40h-40ZM202 28h36v40h-36Z" />
    <circle className="light strong" cx="90" cy="48" r="9" />
    <path
      className="light strong"
      d="M126 38a6 10 0 0 1 0 20a6 10 0 0 1 0 -20ZM142 38a6 10 0 0 1 0 20a6 10 0 0 1 0 -20Z"
    />
    <path
      className="light strong"
      d="M178 30a5 6 0 0 1 0 12a5 6 0 0 1 0 -12ZM178 54a5 6 0 0 1 0 12a5 6 0 0 1 0 -12ZM166 43a6 5 0 0 1 0 10a6 5 0 0 1 0 -10ZM190 43a6 5 0 0 1 0 10a6 5 0 0 1 0 -10Z"
    />
    <path
      className="light strong"
      fillRule="evenodd"
      d="M220 33a15 15 0 0 1 0 30a15 15 0 0 1 0 -30ZM220 38a10 10 0 0 1 0 20a10 10 0 0 1 0 -20Z"
    />
    <circle className="light strong" cx="220" cy="48" r="6" />
  </>
);

export const Sweep = (): JSX.Element => (
  <>
    <Fibre d="M2 48H70" />
    <Light along={[70, 172]} half={[1, 26]} />
    <path className="part dashed" d="M146 8A84 84 0 0 1 146 88" />
    <path className="part solid" d="M158 24l12 6l-4 8l-12 -6Z" />
    <Arrow d="M176 40A84 84 0 0 1 176 62" tip="m6 -5l-6 5l-3 -7" />
  </>
);

export const End = (): JSX.Element => (
  <>
    <circle className="part" cx="120" cy="48" r="40" />
    <circle className="light strong" cx="120" cy="48" r="11" />
    <path className="part dashed" d="M80 48V92M160 48V92M109 48V80M131 48V80" />
    <Arrow d="M80 90H160" tip="m-6 -4l6 4l-6 4" />
  </>
);

export const CutBack = (): JSX.Element => (
  <>
    <Laser y={15} />
    <Laser y={48} />
    <Laser y={81} />
    <Fibre d="M38 15H200" />
    <Fibre d="M38 48H142" />
    <Fibre d="M38 81H84" />
    <Meter x={200} y={15} />
    <Meter x={142} y={48} />
    <Meter x={84} y={81} />
  </>
);

export const Joint = (): JSX.Element => (
  <>
    <Laser y={28} />
    <Fibre d="M38 28H104" />
    <Fibre d="M128 28H200" />
    <path className="part" d="M100 20h12v16h-12ZM120 20h12v16h-12ZM112 28h8" />
    <Meter x={200} y={28} />
    <Laser y={74} />
    <Fibre d="M38 74H200" />
    <Meter x={200} y={74} />
  </>
);

export const Coil = (): JSX.Element => (
  <>
    <Laser />
    <Fibre d="M38 48H96C150 48 150 10 122 10C94 10 94 62 122 62C150 62 146 48 160 48H200" />
    <path className="light weak" d="M92 30L76 16L88 38ZM150 30L166 14L156 38Z" />
    <Meter x={200} />
  </>
);

export const Diode = (): JSX.Element => (
  <>
    <Light along={[38, 104]} half={[6, 6]} />
    <Laser />
    <path className="part" d="M104 34h14v28h-14ZM118 40H214V58M118 56H136V84H214V80" />
    <path className="part" d="M158 40V50m-5 0h10v22h-10ZM158 72V84" />
    <Meter x={200} y={68} />
  </>
);

export const Cell = (): JSX.Element => (
  <>
    <Light along={[38, 112]} half={[6, 7]} />
    <Laser />
    <path className="part heavy" d="M116 12V84" />
    <path className="part" d="M122 12V84M122 26H214V36M122 72H214V62" />
    <Meter x={200} y={48} />
  </>
);

export const Body = (): JSX.Element => (
  <>
    <Light along={[38, 128]} half={[6, 7]} />
    <Laser />
    <path className="part solid" d="M128 34h26v28h-26Z" />
    <path className="part" d="M134 34L126 4M148 34L156 4M154 48H200" />
    <Meter x={200} />
  </>
);

export const Levels = (): JSX.Element => (
  <>
    {[0, 1, 2, 3].map((i) => (
      <g key={i}>
        <path className="part" d={`M${14 + 56 * i} 26h44v44h-44Z`} />
        <circle className={`light level-${i}`} cx={36 + 56 * i} cy="48" r="13" />
      </g>
    ))}
  </>
);
