// The slip of the chosen piece: front and back, words, beads, studs, the tear.
import { photo } from '../core/api';
import type { Size } from '../core/hooks';
import { Key } from '../core/parts';
import { sheetOf } from '../core/route';
import { BeadChart, StudLine, Zigzag } from '../core/shapes';
import type { TableAnswer, TablePiece } from '../core/types';
import { sizeOf } from './table_layout';

export function PiecePicture({ piece, view, width, height }: { piece: Pick<TablePiece, 'number' | 'title' | 'pictures'> & { seen?: TablePiece['seen'] }; view: string; width: number; height: number }) {
  const picture = piece.pictures.find((one) => one.view === view);
  const mm = sizeOf(piece as TablePiece, view);
  const k = Math.min(width / mm.w, height / mm.h);
  if (!picture) {
    return (
      <div class="nopicture" style={{ width: width + 'px', height: height + 'px' }}>
        no picture of the {view}
      </div>
    );
  }
  return (
    <img
      src={photo(piece.number, view, height * devicePixelRatio > 256 ? 512 : 256, picture.v)}
      width={Math.round(mm.w * k)}
      height={Math.round(mm.h * k)}
      alt={`${piece.title}, ${view}`}
    />
  );
}

interface TableSlipProps {
  piece: TablePiece;
  table: TableAnswer;
  size: Size;
  view: string;
  onBeside: () => void;
  onTurn: () => void;
}
export function TableSlip({ piece, table, size, view, onBeside, onTurn }: TableSlipProps) {
  const small = size.phone || size.tablet;
  const section = table.sections.find((one) => one.key === piece.section)?.title;
  const chart = <BeadChart made={piece.made} years={piece.year} width={size.tall ? 178 : small ? 236 : 282} torn={piece.torn ? 1 : 0} />;
  const torn = piece.torn && (
    <p class="torn">
      <Zigzag />
      <span>Does not fit: {piece.torn}</span>
    </p>
  );
  const buttons = (
    <div class="row">
      <a class="btn main" href={sheetOf(piece.number)}>
        Open sheet {!small && <Key>↵</Key>}
      </a>
      {small && (
        <button class="btn soft" onClick={onTurn}>
          Turn over
        </button>
      )}
      <button class="btn soft x" onClick={onBeside}>
        Set beside {!small && <Key>C</Key>}
      </button>
    </div>
  );
  if (small) {
    return (
      <aside class="slip one" aria-label="Chosen piece">
        <div class="c1">
          <PiecePicture piece={piece} view={view} width={size.phone ? 100 : 150} height={size.phone ? 116 : 152} />
        </div>
        <div class="c2">
          <p class="no">
            <span>{[piece.number, piece.tray].filter(Boolean).join(' · ')}</span>
          </p>
          <p class="made">{piece.made || 'not reckoned yet'}</p>
          <p class="by">{piece.by}</p>
          {size.phone ? chart : <p class="tiny">16 beads of 20 between the strokes</p>}
        </div>
        {!size.phone && <div class="c2b">{chart}</div>}
        <div class="c3">
          {torn}
          {!torn && section && <p class="sub">In "{section}"</p>}
          {buttons}
        </div>
      </aside>
    );
  }
  return (
    <aside class="slip one" aria-label="Chosen piece">
      <p class="no">
        <span>{piece.number}</span>
        <span>{piece.tray}</span>
      </p>
      <h2 class="clamp" title={piece.title}>
        {piece.title}
      </h2>
      <div class="two">
        {['front', 'back'].map((side) => (
          <figure key={side}>
            <PiecePicture piece={piece} view={side} width={130} height={size.h < 740 ? 120 : 178} />
            <figcaption>{side}</figcaption>
          </figure>
        ))}
      </div>
      <p class="made">{piece.made || 'not reckoned yet'}</p>
      <p class="by">{piece.by}</p>
      {chart}
      {piece.year && (
        <p class="tiny">
          Each bead is one chance in twenty. Between the strokes, {piece.year.p10} to {piece.year.p90}, lie 16 of them.
        </p>
      )}
      {piece.makers.length > 0 && (
        <>
          <hr class="rule" />
          <StudLine makers={piece.makers} width={282} />
        </>
      )}
      <hr class="rule" />
      <div class="grow">
        {torn}
        {section && (
          <p class="next" style={{ marginTop: '10px' }}>
            <b>Picked</b> · {section}
          </p>
        )}
      </div>
      {buttons}
    </aside>
  );
}
