// The lens: pulled aside on two brass lines, so that it hides nothing.
import { photo } from '../core/api';
import type { Size } from '../core/hooks';
import type { TablePiece } from '../core/types';
import { sizeOf } from './table_layout';

interface LensProps {
  piece: TablePiece;
  view: string;
  x: number;
  y: number;
  pxmm: number;
  size: Size;
}
export function Lens({ piece, view, x, y, pxmm, size }: LensProps) {
  const picture = piece.pictures.find((one) => one.view === view);
  const mm = sizeOf(piece, view);
  const r = size.phone ? 70 : size.tablet ? 84 : 104;
  const near = Math.min(44, Math.max(14, 26 * pxmm));
  const k = r / 25; // 50 mm across
  const right = size.w - (size.phone || size.tablet ? 20 : 360);
  const lx = x + r * 2.6 + near < right ? x + r + near + 90 : x - r - near - 90;
  const ly = Math.max(r + 60, Math.min(size.h - r - 60, y));
  const turn = Math.atan2(ly - y, lx - x);
  const open = Math.acos((near - r) / Math.hypot(lx - x, ly - y));
  const line = (side: number) => {
    const a = turn + side * open;
    return `M${x + near * Math.cos(a)} ${y + near * Math.sin(a)}L${lx + r * Math.cos(a)} ${ly + r * Math.sin(a)}`;
  };
  return (
    <svg class="lens" role="img" aria-label={`Lens on ${piece.number}, ${view}; the bar is 10 mm`}>
      <path d={line(1) + line(-1)} stroke="var(--brass)" stroke-width="1.1" opacity=".6" />
      <circle cx={x} cy={y} r={near} fill="none" stroke="var(--brass-edge)" stroke-width="3.6" />
      <circle cx={x} cy={y} r={near} fill="none" stroke="var(--brass-hi)" stroke-width="2.2" />
      <circle cx={lx + 3} cy={ly + 6} r={r + 6} fill="var(--cast)" />
      <clipPath id="lens">
        <circle cx={lx} cy={ly} r={r} />
      </clipPath>
      <circle cx={lx} cy={ly} r={r} fill="var(--table)" />
      <g clip-path="url(#lens)">
        {picture ? (
          <image href={photo(piece.number, view, 'full', picture.v)} x={lx - (mm.w * k) / 2} y={ly - mm.h * k * 0.42} width={mm.w * k} height={mm.h * k} />
        ) : (
          <text x={lx} y={ly} text-anchor="middle" style={{ fontSize: '14px' }}>
            no picture of the {view}
          </text>
        )}
      </g>
      <circle cx={lx} cy={ly} r={r + 2.5} fill="none" stroke="var(--brass-edge)" stroke-width="7" />
      <circle cx={lx} cy={ly} r={r + 2.5} fill="none" stroke="var(--brass-hi)" stroke-width="4.6" />
      <g transform={`translate(${lx - (10 * k + 50) / 2} ${ly + r - 17})`}>
        <rect x="-8" y="-13" width={10 * k + 62} height="22" rx="2" fill="var(--paper)" stroke="var(--hair)" />
        <path d={`M0 -6v7h${10 * k}v-7`} fill="none" stroke="var(--ink)" stroke-width="1.4" />
        <text x={10 * k + 7} y="2" style={{ fontSize: '12.5px' }}>
          10 mm
        </text>
      </g>
    </svg>
  );
}
