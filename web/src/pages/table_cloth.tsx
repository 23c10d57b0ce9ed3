// The cloth of the Table: lanes, the tiles, and the hand that pans, zooms and touches.
import { useEffect, useRef } from 'preact/hooks';
import { xOf, type Axis } from '../core/geometry';
import { Grid, type Layout } from './table_layout';
import type { Tiles } from './tiles';

export type LaidOut = Layout & { axis: Axis; pxmm: number; version: number; key: string };
export interface ClothProps {
  tiles: Tiles;
  layout: LaidOut;
  scroll: { x: number; y: number };
  setScroll: (to: { x: number; y: number }) => void;
  bottom: number;
  onHit: (i: number) => void;
  onOpen: (i: number) => void;
  onZoom: (by: number) => void;
  onYears: (factor: number) => void;
}

// Panning and zooming by wheel, finger, pen or mouse. A touch that hardly moves is a choice.
function useHand(canvas: { current: HTMLCanvasElement | null }, props: ClothProps) {
  const latest = useRef(props);
  latest.current = props;
  const finder = useRef<{ of: LaidOut; grid: Grid } | null>(null);
  // Made when a layout is first touched: many are passed through without.
  const gridOf = (of: LaidOut) => {
    if (finder.current?.of !== of) {
      finder.current = { of, grid: new Grid(of.boxes) };
    }
    return finder.current.grid;
  };
  useEffect(() => {
    const board = canvas.current!;
    const hands = new Map<number, { x: number; y: number }>();
    let moved = 0;
    let apart = 0;
    let wheel = 0;
    let lastTap = 0;
    // Several movements within a frame are one.
    let owed = { x: 0, y: 0 };
    let frame = 0;
    const settle = () => {
      const { scroll, layout, setScroll, bottom, tiles } = latest.current;
      setScroll({
        x: Math.max(0, Math.min(Math.max(0, layout.width - tiles.width + 60), scroll.x + owed.x)),
        y: Math.max(0, Math.min(Math.max(0, layout.height - bottom + 20), scroll.y + owed.y)),
      });
      owed = { x: 0, y: 0 };
      frame = 0;
    };
    const pan = (dx: number, dy: number) => {
      owed = { x: owed.x + dx, y: owed.y + dy };
      frame = frame || requestAnimationFrame(settle);
    };
    const down = (event: PointerEvent) => {
      board.setPointerCapture(event.pointerId);
      hands.set(event.pointerId, { x: event.clientX, y: event.clientY });
      moved = 0;
      apart = 0;
    };
    const move = (event: PointerEvent) => {
      const was = hands.get(event.pointerId);
      if (!was) {
        return;
      }
      const now = { x: event.clientX, y: event.clientY };
      hands.set(event.pointerId, now);
      if (hands.size === 2) {
        const [a, b] = [...hands.values()];
        const far = Math.hypot(a.x - b.x, a.y - b.y);
        apart = apart || far;
        if (far / apart > 1.35 || far / apart < 0.74) {
          latest.current.onZoom(far > apart ? 1 : -1);
          apart = far;
        }
        moved += 20;
        return;
      }
      moved += Math.hypot(now.x - was.x, now.y - was.y);
      if (moved > 6) {
        pan(was.x - now.x, was.y - now.y);
      }
    };
    const up = (event: PointerEvent) => {
      hands.delete(event.pointerId);
      if (event.type === 'pointerup' && moved <= 12) {
        const edge = board.getBoundingClientRect();
        const { scroll, layout } = latest.current;
        const slack = event.pointerType === 'mouse' ? 2 : 12;
        const hit = gridOf(layout).hit(event.clientX - edge.left + scroll.x, event.clientY - edge.top + scroll.y, slack);
        if (hit >= 0) {
          const twice = event.timeStamp - lastTap < 350;
          lastTap = event.timeStamp;
          (twice ? latest.current.onOpen : latest.current.onHit)(hit);
        }
      }
    };
    const spin = (event: WheelEvent) => {
      event.preventDefault();
      if (event.ctrlKey || event.altKey) {
        wheel += event.deltaY;
        if (Math.abs(wheel) > 60) {
          event.altKey ? latest.current.onYears(wheel < 0 ? 1.5 : 1 / 1.5) : latest.current.onZoom(wheel < 0 ? 1 : -1);
          wheel = 0;
        }
        return;
      }
      pan(event.shiftKey ? event.deltaY : event.deltaX, event.shiftKey ? 0 : event.deltaY);
    };
    board.addEventListener('pointerdown', down);
    board.addEventListener('pointermove', move);
    board.addEventListener('pointerup', up);
    board.addEventListener('pointercancel', up);
    board.addEventListener('wheel', spin, { passive: false });
    return () => {
      cancelAnimationFrame(frame);
      board.removeEventListener('pointerdown', down);
      board.removeEventListener('pointermove', move);
      board.removeEventListener('pointerup', up);
      board.removeEventListener('pointercancel', up);
      board.removeEventListener('wheel', spin);
    };
  }, []);
}

export function Cloth(props: ClothProps) {
  const { tiles, layout, scroll } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const before = useRef(layout.pxmm);
  useHand(canvas, props);
  useEffect(() => tiles.onto(canvas.current!, () => canvas.current?.setAttribute('data-whole', 'yes')), [tiles]);
  useEffect(() => {
    if (layout.version > 0) {
      canvas.current?.removeAttribute('data-whole');
      tiles.show(layout.version, layout.pxmm / before.current);
      before.current = layout.pxmm;
    }
  }, [layout.version]);
  useEffect(() => {
    if (layout.version > 0) {
      tiles.look(scroll.x, scroll.y);
    }
  }, [scroll.x, scroll.y, layout.version]);
  return (
    <>
      <Lanes layout={layout} scroll={scroll} />
      <canvas ref={canvas} class="cloth" aria-hidden="true" />
    </>
  );
}

function Lanes({ layout, scroll }: { layout: LaidOut; scroll: { x: number; y: number } }) {
  const high = innerHeight;
  const near = layout.lanes.filter((lane) => lane.y + lane.high > scroll.y - 40 && lane.y < scroll.y + high);
  const x = (year: number) => xOf(layout.axis, year) - scroll.x;
  return (
    <div class="lanes" style={{ transform: `translateY(${-scroll.y}px)` }}>
      {near.map((lane) => (
        <section key={lane.name} class={'lane' + (lane.unrecorded ? ' hand' : '')} style={{ top: lane.y + 'px', height: lane.high + 'px' }}>
          <h2>{lane.name}</h2>
          {lane.words.map((words) => (
            <p key={words}>{words}</p>
          ))}
          {(lane.from !== null || lane.to !== null) && (
            <svg class="span" aria-hidden="true" style={{ top: lane.baseY - lane.y - 8 + 'px' }} width="100%" height="12">
              <path
                d={`M${x(lane.from ?? layout.axis.y0)} 6H${x(lane.to ?? layout.axis.y1)}` + (lane.from !== null ? `M${x(lane.from)} 2v8` : '') + (lane.to !== null ? `M${x(lane.to)} 2v8` : '')}
                stroke="var(--ink)"
                stroke-opacity=".5"
              />
            </svg>
          )}
        </section>
      ))}
    </div>
  );
}
