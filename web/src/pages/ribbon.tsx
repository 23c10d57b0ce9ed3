// One piece of evidence as a ribbon over the years: where it lets the year lie, and how hard it
// pulls.
import { useId } from 'preact/hooks';
import type { Evidence } from '../core/types';

export const thickness = (bits: number) => Math.min(20, Math.round(7 + 30 * bits));

interface RibbonProps {
  line: Evidence;
  x: (year: number) => number;
  y: number;
  lifted: boolean;
  from: number; // edges of the board, in pixels
  to: number;
}
export function Ribbon({ line, x, y, lifted, from, to }: RibbonProps) {
  const id = useId();
  const years = line.alone!;
  const colour = line.torn ? 'var(--rust)' : 'var(--tide)';
  const high = thickness(line.bits);
  const l = Math.max(from, x(years.from - 0.5));
  const r = Math.max(l + 6, Math.min(to, x(years.from + years.p.length - 0.5)));
  const first = years.p.length > 1 ? (l - x(years.from - 0.5)) / (x(1) - x(0)) : 0;
  const count = Math.max(1, (r - l) / (x(1) - x(0)));
  const stops = Array.from({ length: 17 }, (_, i) => {
    const at = Math.min(years.p.length - 1, Math.max(0, Math.floor(first + (count * i) / 16)));
    return <stop key={i} offset={i / 16} stop-color={colour} stop-opacity={0.05 + (0.87 * Number(years.p[at])) / 9} />;
  });
  const best = [...years.p].indexOf('9');
  const flat = [...years.p].filter((digit) => digit === '9').length > years.p.length * 0.7;
  const middle = x(years.from + best);
  const edge = x(years.from + years.p.lastIndexOf('9') + 0.5);
  const tilt = (-Math.atan2(9, r - l) * 180) / Math.PI;
  const top = y - high / 2;
  const body = (
    <g>
      <rect x={l} y={top} width={r - l} height={high} fill={`url(#${id})`} />
      {high > 8 && (
        <path d={`M${l + (r - l) * 0.12} ${top + 1.8}H${r - (r - l) * 0.12}M${l + (r - l) * 0.12} ${top + high - 1.8}H${r - (r - l) * 0.12}`} stroke="var(--paper)" stroke-opacity=".55" stroke-dasharray="3 2.4" />
      )}
      {flat && edge < to - 4 && <path d={`M${edge} ${top - 5}v${high + 10}`} stroke={colour} stroke-width="2.2" />}
      {!flat && middle > l && middle < r && <path d={`M${middle} ${top - 1}l2.6 ${high / 2 + 1}l-2.6 ${high / 2 + 1}l-2.6 ${-high / 2 - 1}z`} fill="var(--paper)" fill-opacity=".9" />}
      {line.torn && <path d={`M${l} ${top - 4}` + Array.from({ length: 4 }, (_, i) => `l${i % 2 ? -6 : 6} ${(high + 8) / 4}`).join('')} fill="none" stroke="var(--rust)" stroke-width="2.2" />}
    </g>
  );
  return (
    <g>
      <linearGradient id={id} gradientUnits="userSpaceOnUse" x1={l} x2={r} y1="0" y2="0">
        {stops}
      </linearGradient>
      {lifted ? (
        <g>
          <rect x={l + (r - l) * 0.08} y={top + 6} width={(r - l) * 0.84} height={high} fill="none" stroke="var(--ink-3)" stroke-dasharray="3 3" stroke-width="1.1" />
          <g class="lift" transform={`rotate(${tilt} ${(l + r) / 2} ${y}) translate(0 -8)`}>
            <rect x={l + 6} y={top + 4} width={r - l - 4} height={high} fill="var(--cast)" opacity=".6" />
            <rect x={l} y={top} width={r - l} height={high} fill="var(--paper)" />
            {body}
            <rect x={l} y={top} width={r - l} height={high} fill="none" stroke="var(--brass)" stroke-width="1.6" />
          </g>
        </g>
      ) : (
        body
      )}
    </g>
  );
}
