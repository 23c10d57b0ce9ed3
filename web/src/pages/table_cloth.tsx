// The cloth of the Table: lanes, the tiles, and the hand that pans, zooms and touches.
import type { FunctionComponent } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { xOf } from '../core/geometry';
import { Grid, type Lane, type Layout } from './table_layout';
import { within } from './table_sight';
import type { Tiles } from './tiles';

export type LaidOut = Layout & { pxmm: number; version: number; key: string };
export interface ClothProps {
  tiles: Tiles;
  layout: LaidOut;
  scroll: { x: number; y: number };
  setScroll: (to: { x: number; y: number }) => void;
  bottom: number; // what nothing covers
  right: number;
  onHit: (i: number) => void;
  onOpen: (i: number) => void;
  // The hand made things and years, or years alone, so many times as large about a point of the
  // window; `stretch` says how much of that there is room for.
  stretch: (by: Zoom) => { sx: number; sy: number };
  onZoom: (by: Zoom, x: number, y: number) => void;
}
export interface Zoom {
  things: number;
  years: number;
}

const settling = 130; // ms of rest after which a zoom settles
const ofWheel = 0.0045; // a notch is about a step

// While the hand zooms what is there is stretched; at rest it settles on a step of the scale.
class Zooming {
  private by: Zoom = { things: 1, years: 1 };
  private timer = 0;
  constructor(private props: { current: ClothProps }) {}
  more({ things, years }: Zoom, x: number, y: number) {
    this.by = { things: this.by.things * things, years: this.by.years * years };
    const { sx, sy } = this.props.current.stretch(this.by);
    this.props.current.tiles.stretch(sx, sy, x, y);
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      this.props.current.onZoom(this.by, x, y);
      this.by = { things: 1, years: 1 };
    }, settling);
  }
  end() {
    clearTimeout(this.timer);
  }
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
    let lastTap = 0;
    const zooming = new Zooming(latest);
    const pointOf = (x: number, y: number): [number, number] => {
      const edge = board.parentElement!.getBoundingClientRect();
      return [x - edge.left, y - edge.top];
    };
    // Several movements within a frame are one.
    let owed = { x: 0, y: 0 };
    let frame = 0;
    const settle = () => {
      const { scroll, layout, setScroll, bottom, right } = latest.current;
      setScroll(within({ x: scroll.x + owed.x, y: scroll.y + owed.y }, layout, bottom, right));
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
        const by = far / (apart || far);
        zooming.more({ things: by, years: by }, ...pointOf((a.x + b.x) / 2, (a.y + b.y) / 2));
        apart = far;
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
        const [x, y] = pointOf(event.clientX, event.clientY);
        const { scroll, layout } = latest.current;
        const slack = event.pointerType === 'mouse' ? 2 : 12;
        const hit = gridOf(layout).hit(x + scroll.x, y + scroll.y, slack);
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
        const by = Math.exp(-event.deltaY * (event.deltaMode === 1 ? 33 : 1) * ofWheel);
        zooming.more({ things: event.altKey ? 1 : by, years: by }, ...pointOf(event.clientX, event.clientY));
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
      zooming.end();
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
  useHand(canvas, props);
  useLayoutEffect(() => tiles.onto(canvas.current!), [tiles]);
  useLayoutEffect(() => {
    if (layout.version > 0) {
      tiles.show(layout.version);
    }
  }, [layout.version]);
  useLayoutEffect(() => {
    if (layout.version > 0) {
      tiles.look(scroll.x, scroll.y);
    }
  }, [scroll.x, scroll.y, layout.version]);
  return (
    <>
      <Lanes layout={layout} scroll={scroll} of={Ground} />
      <canvas ref={canvas} class="cloth" aria-hidden="true" />
      <Lanes layout={layout} scroll={scroll} of={Name} />
    </>
  );
}

interface InLane {
  lane: Lane;
  layout: LaidOut;
  scroll: { x: number; y: number };
}
// Below the pieces and above them: a name stays to be read where pieces are panned over it.
function Lanes({ layout, scroll, of: Part }: { layout: LaidOut; scroll: { x: number; y: number }; of: FunctionComponent<InLane> }) {
  const near = layout.lanes.filter((lane) => lane.y + lane.high > scroll.y - 40 && lane.y < scroll.y + innerHeight);
  return (
    <div class="lanes" style={{ transform: `translateY(${-scroll.y}px)` }}>
      {near.map((lane) => (
        <Part key={lane.name} lane={lane} layout={layout} scroll={scroll} />
      ))}
    </div>
  );
}

const Name = ({ lane }: InLane) => (
  <section class="lane" style={{ top: lane.y + 'px' }}>
    <h2>{lane.name}</h2>
    {lane.words.map((words) => (
      <p key={words}>{words}</p>
    ))}
  </section>
);

function Ground({ lane, layout, scroll }: InLane) {
  const x = (year: number) => xOf(layout.axis, year) - scroll.x;
  const { from, to } = lane;
  return (
    <div class={'ground-of' + (lane.unrecorded ? ' hand' : '')} style={{ top: lane.y + 'px', height: lane.high + 'px' }}>
      {(from !== null || to !== null) && (
        <svg class="span" aria-hidden="true" style={{ top: lane.baseY - lane.y - 8 + 'px' }} width="100%" height="12">
          <path
            d={`M${x(from ?? layout.axis.y0)} 6H${x(to ?? layout.axis.y1)}` + (from !== null ? `M${x(from)} 2v8` : '') + (to !== null ? `M${x(to)} 2v8` : '')}
            stroke="var(--ink)"
            stroke-opacity=".5"
          />
        </svg>
      )}
    </div>
  );
}
