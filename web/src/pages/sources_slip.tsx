// The slip of a claim (who says so, who not, what the pieces say) or of one source.
import { useState } from 'preact/hooks';
import { asProblem, call, photo } from '../core/api';
import { sheetOf } from '../core/route';
import { Stud, Zigzag } from '../core/shapes';
import { tellProblem } from '../core/tell';
import type { ClaimLook, ClaimOnFile, Source, SourcesAnswer, TablePiece, Tested, Voice } from '../core/types';

const inTwenty = (p: number) => {
  const n = Math.round(20 * p);
  return n === 0 && p > 0 ? 'less than 1 in 20' : `${n} in 20`;
};

export function Twenty({ p, of }: { p: number; of: string }) {
  const n = Math.round(20 * p);
  return (
    <svg width="290" height="14" role="img" aria-label={`${of}: ${inTwenty(p)}`}>
      {[...Array(20)].map((_, i) => (
        <Stud key={i} kind={i < n ? 'solid' : 'open'} x={6 + i * 13.6 + (i >= n ? 8 : 0)} y={7} r={5.4} />
      ))}
    </svg>
  );
}

// Told for and told against, with a bar of how far each is believed; what repeats another counts once.
function VoiceCell({ voice }: { voice: Voice }) {
  return (
    <div class="voice">
      <b>{voice.title}</b>
      <small>{voice.says}</small>
      <svg width="100%" height="9" role="img" aria-label={voice.counted ? `believed ${inTwenty(voice.reliability)}` : 'repeats another; not counted again'}>
        <rect x=".7" y="1" width={voice.counted ? `${100 * voice.reliability}%` : '12%'} height="6.5" fill={!voice.counted ? 'none' : voice.for ? 'var(--ink)' : 'url(#against)'} stroke="var(--ink)" stroke-width="1" stroke-dasharray={voice.counted ? undefined : '3 2'} />
      </svg>
    </div>
  );
}

function Carriers({ claim, pieces }: { claim: ClaimOnFile; pieces: Map<string, TablePiece> }) {
  if (claim.carried_by.length === 0) {
    return null;
  }
  return (
    <>
      <h3>Pieces that carry it most</h3>
      <ul class="carriers">
        {claim.carried_by.slice(0, 3).map((one) => {
          const front = pieces.get(one.number)?.pictures.find((picture) => picture.view === 'front');
          return (
            <li key={one.number}>
              {front && <img src={photo(one.number, 'front', 128, front.v)} height="66" alt="" />}
              <a href={sheetOf(one.number)}>{one.number}</a>
              <small>{inTwenty(one.p)}</small>
            </li>
          );
        })}
      </ul>
    </>
  );
}

// Looks at the pieces that carry it, by how far they should move it for their minutes.
function ClaimLooks({ looks }: { looks: ClaimLook[] }) {
  if (looks.length === 0) {
    return <p class="sub">No look at these pieces should move it by as much as 1 in 200.</p>;
  }
  return (
    <ul class="next-looks">
      {looks.map((look, i) => (
        <li key={look.number + look.character} class={i === 0 ? 'next' : ''}>
          <b>
            {i === 0 && 'Look next: '}
            <a href={sheetOf(look.number)}>{look.number}</a>, {look.label}
          </b>
          <br />
          {Math.round(look.minutes)} min; {look.answers.slice(0, 3).map((answer) => `${answer.value}: ${(20 * answer.p_claim).toFixed(1)}`).join('; ')} in 20
        </li>
      ))}
    </ul>
  );
}

function ClaimSlip({ claim, pieces }: { claim: ClaimOnFile; pieces: Map<string, TablePiece> }) {
  const side = (yes: boolean) => claim.voices.filter((voice) => voice.for === yes).sort((a, b) => Number(b.counted) - Number(a.counted) || b.reliability - a.reliability);
  return (
    <>
      <p class="tiny">claim</p>
      <h2 class="by">{claim.words}</h2>
      {claim.p === null ? (
        <p class="sub">The pieces are being asked.</p>
      ) : (
        <>
          <p class="sub">All together: {inTwenty(claim.p)}</p>
          <Twenty p={claim.p} of="The claim" />
          {claim.p_pieces !== null && <p class="sub">By the pieces alone: {inTwenty(claim.p_pieces)}</p>}
        </>
      )}
      <div class="sides">
        <h3>for</h3>
        <h3>against</h3>
        <div>
          {side(true).map((voice) => (
            <VoiceCell key={voice.source + voice.says} voice={voice} />
          ))}
          {side(true).length === 0 && <p class="tiny">nobody</p>}
        </div>
        <div>
          {side(false).map((voice) => (
            <VoiceCell key={voice.source + voice.says} voice={voice} />
          ))}
          {side(false).length === 0 && <p class="tiny">nobody</p>}
        </div>
      </div>
      <Carriers claim={claim} pieces={pieces} />
      {claim.carried_by.length > 0 && (
        <>
          <h3>What would settle it</h3>
          <ClaimLooks looks={claim.looks.slice(0, 3)} />
        </>
      )}
      {claim.turns.length > 0 && (
        <>
          <h3>What would move it</h3>
          {claim.turns.slice(0, 5).map((turn) => (
            <p class="turn" key={turn.what}>
              {turn.what}: <b>{inTwenty(turn.p)}</b>
            </p>
          ))}
        </>
      )}
    </>
  );
}

export const heldUp = (source: Source) => (source.borne_out === null ? 'never tested by a piece' : `borne out ${Math.round(source.borne_out)} in 20, ${source.tested === 1 ? '1 saying' : source.tested + ' sayings'} tested`);

function SourceSlip({ source, answer }: { source: Source; answer: SourcesAnswer }) {
  const name = (key: string) => answer.sources.find((one) => one.key === key)?.title ?? key;
  const others = answer.echoes.find((echo) => echo.tellers.includes(source.key))?.tellers.filter((key) => key !== source.key) ?? [];
  const said = answer.said.filter((one) => one.source === source.key);
  return (
    <>
      <p class="tiny">
        {source.kind}
        {source.year !== null && `, ${source.year}`}
      </p>
      <h2 class="by">{source.title}</h2>
      {source.citation && <p class="sub">{source.citation}</p>}
      {source.borne_out !== null && <Twenty p={source.borne_out / 20} of="Borne out by the pieces" />}
      <p class="sub">
        {heldUp(source)}. Believed {inTwenty(source.reliability)}, {source.stated ? 'as you state' : 'as is usual for its kind'}.
      </p>
      {source.derives_from.length > 0 && <p class="sub">Had it from {source.derives_from.map(name).join(', ')}.</p>}
      {others.length > 0 && <p class="sub">Of one origin with {others.map(name).join(', ')}: they count once.</p>}
      <h3>What it says</h3>
      {said.slice(0, 12).map((one) => (
        <p class={'saying' + (one.torn ? ' torn' : '')} key={one.record}>
          {one.torn && <Zigzag />}
          <span>
            <a href={sheetOf(one.number)}>{one.number}</a> {one.against && 'not: '}
            {one.text} {one.p !== null && <small>({inTwenty(one.p)} by all else)</small>}
          </span>
        </p>
      ))}
      {said.length === 0 && <p class="tiny">Nothing of single pieces.</p>}
      {said.length > 12 && <p class="tiny">and {said.length - 12} more</p>}
    </>
  );
}

function TestLine() {
  const [words, type] = useState('');
  const [busy, set] = useState(false);
  const [answer, say] = useState<Tested | null>(null);
  const ask = async (event: Event) => {
    event.preventDefault();
    if (busy || !words.trim()) {
      return;
    }
    set(true);
    try {
      say(await call('test', { claim: [words.trim()] }));
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
    set(false);
  };
  return (
    <form class="testing" onSubmit={ask}>
      <label>
        <span class="sub">
          Test a claim <span class="key">T</span>
        </span>
        <input class="field" id="test-claim" placeholder="slide tie first made in 1946 by Oda Vessen" value={words} onInput={(event) => type((event.target as HTMLInputElement).value)} />
      </label>
      <button class="btn soft" aria-disabled={busy}>
        {busy ? 'Asking the pieces' : 'Test it'}
      </button>
      {answer && (
        <p role="status">
          {answer.claim}: <b>{inTwenty(answer.p)}</b>; by the pieces alone {inTwenty(answer.p_pieces)}.
        </p>
      )}
    </form>
  );
}

export function SourcesSlip({ claim, source, answer, pieces }: { claim: ClaimOnFile | null; source: Source | null; answer: SourcesAnswer; pieces: Map<string, TablePiece> }) {
  return (
    <aside class="slip side claims" aria-label={claim ? 'Claim' : 'Chosen source'} tabIndex={0}>
      {claim ? <ClaimSlip claim={claim} pieces={pieces} /> : source ? <SourceSlip source={source} answer={answer} /> : <p class="sub">Choose a source or a claim.</p>}
      <hr class="rule" />
      <TestLine />
    </aside>
  );
}
