import type { JSX } from 'react';
import { Arrow, Card, Fibre, Laser, Lens, Light, Meter, Ruler } from './pieces.tsx';

/** Drawings of the gauges of beam, way, mount and lens; pure, no sizes but places on their paper. */

export const Blade = (): JSX.Element => (
  <>
    <Light along={[38, 120]} half={[7, 9]} />
    <path className="light" d="M120 48L205 49V60L120 57Z" />
    <Laser />
    <path className="part solid" d="M116 48V8h8V48Z" />
    <Arrow d="M136 14V40" tip="m-4 -6l4 6l4 -6" />
    <Meter x={205} y={54} />
  </>
);

export const Camera = (): JSX.Element => (
  <>
    <Light along={[38, 172]} half={[6, 9]} />
    <Laser />
    <path className="part" d="M172 24h40v48h-40ZM172 34h-6v28h6" />
    <ellipse className="light strong" cx="194" cy="48" rx="9" ry="12" />
  </>
);

export const Cards = (): JSX.Element => (
  <>
    <Light along={[38, 214]} half={[4, 26]} />
    <Laser />
    <Card x={88} from={20} to={76} />
    <Card x={214} from={8} to={88} />
  </>
);

export const Focus = (): JSX.Element => (
  <>
    <Light along={[4, 56, 120, 150, 180, 232]} half={[18, 20, 6, 3.5, 6, 19]} />
    <Lens x={56} />
    {[104, 128, 150, 172, 204].map((x) => (
      <Card key={x} x={x} from={22} to={74} />
    ))}
  </>
);

export const RulerAlong = (): JSX.Element => (
  <>
    <path className="part" d="M40 30h150v18h-150Z" />
    <Ruler from={25} to={215} across={76} />
    <path className="part dashed" d="M40 30V76M190 30V76" />
  </>
);

export const Part = (): JSX.Element => (
  <>
    <Light along={[38, 118]} half={[7, 7]} />
    <g className="faint">
      <Light along={[126, 202]} half={[7, 7]} />
    </g>
    <Laser />
    <path className="part glass" d="M116 20h10v56h-10Z" />
    <Meter x={62} y={48} />
    <Meter x={202} y={48} />
  </>
);

export const Screw = (): JSX.Element => (
  <>
    <path className="light" d="M40 80L96 42L100 50L44 88Z" />
    <path className="light" d="M96 42L222 24V32L100 50Z" />
    <path className="light weak" d="M96 42L222 58V66L100 50Z" />
    <path className="part heavy" d="M92 28L104 66" />
    <path className="part" d="M100 32l18 -6m-4 -5l6 12M106 56l16 -6" />
    <Ruler from={10} to={88} across={222} upright />
    <Arrow d="M212 34V56" tip="m-4 -6l4 6l4 -6" />
  </>
);

export const Reverse = (): JSX.Element => (
  <>
    <Fibre d="M2 70C20 70 24 48 44 48" />
    <Light along={[44, 78, 224]} half={[1, 11, 24]} />
    <Lens x={78} half={22} />
    <path className="part" d="M44 30h10M44 66h10M44 30V66" />
    <Ruler from={18} to={78} across={224} upright />
    <Arrow d="M112 84H150" tip="m-6 -4l6 4l-6 4" />
  </>
);

export const Imaging = (): JSX.Element => (
  <>
    <path className="light" d="M30 30L110 24L210 62L110 72Z" />
    <path className="part solid" d="M26 48V30l-4 6h8l-4 -6" />
    <Lens x={110} />
    <Card x={210} from={16} to={80} />
    <Ruler from={24} to={212} across={92} />
  </>
);

export const Thread = (): JSX.Element => (
  <>
    <path className="part" d="M20 26h70v44h-70ZM90 34h70v28h-70Z" />
    <path className="part" d="M98 34l5 28M110 34l5 28M122 34l5 28M134 34l5 28M146 34l5 28" />
    <Ruler from={90} to={180} across={88} />
    <Arrow d="M176 36a14 14 0 0 1 0 24" tip="m5 -5l-5 5l-1 -7" />
  </>
);

export const TwoSpots = (): JSX.Element => (
  <>
    <path className="part" d="M60 6h84v84h-84Z" />
    <Ruler from={66} to={138} across={84} />
    <circle className="light strong" cx="92" cy="40" r="9" />
    <circle className="part" cx="116" cy="28" r="9" />
    <path className="part" d="M170 40h30v20h-30ZM170 46h-6v8h6" />
    <path className="part dashed" d="M92 40L116 28" />
  </>
);
