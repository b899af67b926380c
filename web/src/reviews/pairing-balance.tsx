import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useId, useMemo, type ReactNode } from 'react';
import type { ObserverLetter } from '../ui/observer-mark.js';
import { readTaxon } from '../ui/taxon.js';
import { useWidth } from '../ui/use-width.js';
import { birds, birdsAbout } from '../ui/words.js';
import {
  FLOW_KINDS,
  layOutPairing,
  type Flow,
  type FlowKind,
  type Node,
  type Ribbon,
} from './pairing-layout.js';
import { kindWords, pairingSentence, totalsOf } from './pairing-words.js';

const barWidth = 12;
const narrow = 520;
const stub = 52;
/** Room for a name of `mostLetters` beside a bar on a phone, in most system fonts. */
const narrowLabel = 112;
const mostLetters = 15;

/**
 * The pairing balance of two observers: two bars of birds, and what was paired with what between
 * them. The sentence comes first; the table beside the drawing says the same in numbers.
 */
export function PairingBalance(props: {
  readonly flows: readonly Flow[];
  readonly a: ObserverLetter;
  readonly b: ObserverLetter;
}): ReactNode {
  const { flows, a, b } = props;
  return (
    <div className="stack">
      <p className="sentence">{pairingSentence(totalsOf(flows), a.letter, b.letter)}</p>
      <div className="pairing">
        <PairingDrawing flows={flows} a={a} b={b} />
        <PairingTable flows={flows} a={a} b={b} />
      </div>
    </div>
  );
}

function PairingDrawing(props: {
  readonly flows: readonly Flow[];
  readonly a: ObserverLetter;
  readonly b: ObserverLetter;
}): ReactNode {
  const [letterA, letterB] = [props.a.letter, props.b.letter];
  const [box, width] = useWidth(640);
  const id = useId();
  const isNarrow = width < narrow;
  const labelHeight = isNarrow ? 34 : 20;
  const layout = useMemo(() => layOutPairing(props.flows, labelHeight), [props.flows, labelHeight]);
  const labelWidth = isNarrow ? narrowLabel : Math.min(roomForLabels(props.flows), width * 0.36);
  const [leftBar, rightBar] = [labelWidth, width - labelWidth - barWidth];
  const headHeight = 26;
  const height = layout.height + headHeight;
  return (
    <div ref={box} className="pairing-drawing">
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={t`Pairing balance of ${letterA} and ${letterB}, drawn; the table says the same.`}
      >
        <Patterns id={id} />
        <text x={leftBar + barWidth} y={14} textAnchor="end" className="pairing-head">
          {isNarrow ? letterA : `${letterA} · ${props.a.name}`}
        </text>
        <text x={rightBar} y={14} className="pairing-head">
          {isNarrow ? letterB : `${letterB} · ${props.b.name}`}
        </text>
        <g transform={`translate(0 ${headHeight})`}>
          {layout.ribbons.map((ribbon, index) => (
            <RibbonShape
              key={index}
              ribbon={ribbon}
              id={id}
              left={leftBar + barWidth}
              right={rightBar}
            />
          ))}
          {layout.left.map((node) => (
            <NodeShape key={node.taxon} node={node} x={leftBar} side="left" isNarrow={isNarrow} />
          ))}
          {layout.right.map((node) => (
            <NodeShape key={node.taxon} node={node} x={rightBar} side="right" isNarrow={isNarrow} />
          ))}
        </g>
      </svg>
      <ul className="plain-list pairing-legend small">
        {FLOW_KINDS.filter((kind) => props.flows.some((flow) => flow.kind === kind)).map((kind) => (
          <li key={kind}>
            <svg width="26" height="14" aria-hidden="true">
              <rect
                x="1"
                y="1"
                width="24"
                height="12"
                fill={fillOf(kind, id)}
                className={`ribbon ribbon-${kind}`}
              />
            </svg>{' '}
            {kindWords(kind, letterA, letterB)}
          </li>
        ))}
      </ul>
    </div>
  );
}

function fillOf(kind: FlowKind, id: string): string {
  return kind === 'agreed'
    ? 'var(--data-agreed)'
    : `url(#${id}-${kind === 'only-b' ? 'only-a' : kind})`;
}

/** Each kind has a hatch of its own beside its colour. */
function Patterns(props: { readonly id: string }): ReactNode {
  const { id } = props;
  return (
    <defs>
      <pattern id={`${id}-compatible`} width="6" height="6" patternUnits="userSpaceOnUse">
        <rect width="6" height="6" fill="var(--sheet)" />
        <rect width="6" height="3.5" fill="var(--data-compatible)" />
      </pattern>
      <pattern
        id={`${id}-differently`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="7" height="7" fill="var(--sheet)" />
        <path d="M0 3.5H7M3.5 0V7" stroke="var(--data-differently)" strokeWidth="2" />
      </pattern>
      <pattern id={`${id}-only-a`} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect width="7" height="7" fill="var(--sheet)" />
        <circle cx="3.5" cy="3.5" r="1.6" fill="var(--data-only)" />
      </pattern>
    </defs>
  );
}

function RibbonShape(props: {
  readonly ribbon: Ribbon;
  readonly id: string;
  readonly left: number;
  readonly right: number;
}): ReactNode {
  const { ribbon, id, left, right } = props;
  const middle = (left + right) / 2;
  const { leftTop, rightTop, height } = ribbon;
  let path: string;
  let textAt: readonly [number, number];
  if (leftTop !== null && rightTop !== null) {
    path =
      `M${left} ${leftTop}C${middle} ${leftTop} ${middle} ${rightTop} ${right} ${rightTop}v${height}` +
      `C${middle} ${rightTop + height} ${middle} ${leftTop + height} ${left} ${leftTop + height}Z`;
    textAt = [middle, (leftTop + rightTop + height) / 2];
  } else if (leftTop !== null) {
    path = `M${left} ${leftTop}h${stub}v${height}h${-stub}Z`;
    textAt = [left + stub / 2, leftTop + height / 2];
  } else if (rightTop !== null) {
    path = `M${right} ${rightTop}h${-stub}v${height}h${stub}Z`;
    textAt = [right - stub / 2, rightTop + height / 2];
  } else return null;
  return (
    <g>
      <path d={path} fill={fillOf(ribbon.kind, id)} className={`ribbon ribbon-${ribbon.kind}`} />
      {height < 13 ? null : (
        <text
          x={textAt[0]}
          y={textAt[1] + 4}
          textAnchor="middle"
          className="pairing-text pairing-number"
        >
          {birds(ribbon.number)}
        </text>
      )}
    </g>
  );
}

function NodeShape(props: {
  readonly node: Node;
  readonly x: number;
  readonly side: 'left' | 'right';
  readonly isNarrow: boolean;
}): ReactNode {
  const { node, x, side } = props;
  const textX = side === 'left' ? x - 6 : x + barWidth + 6;
  const anchor = side === 'left' ? 'end' : 'start';
  const middle = node.top + node.height / 2;
  // A piece thinner than its label has the label beside its top.
  const textY = Math.max(middle, node.top + 7);
  const { common } = readTaxon(node.taxon);
  return (
    <g>
      <rect x={x} y={node.top} width={barWidth} height={node.height} className="pairing-bar" />
      {props.isNarrow ? (
        <text x={textX} y={textY} textAnchor={anchor} className="pairing-text">
          <tspan className="pairing-count">{birds(node.number)}</tspan>
          <tspan x={textX} dy="1.1em">
            {shortened(common, mostLetters)}
          </tspan>
        </text>
      ) : (
        <text x={textX} y={textY + 4} textAnchor={anchor} className="pairing-text">
          {side === 'left' ? `${shortened(common, 30)} ` : ''}
          <tspan className="pairing-count">{birds(node.number)}</tspan>
          {side === 'right' ? ` ${shortened(common, 30)}` : ''}
        </text>
      )}
    </g>
  );
}

/** The table says the whole name. */
function shortened(common: string, most: number): string {
  return common.length > most ? `${common.slice(0, most - 1)}…` : common;
}

/** The same as the drawing, in rows. */
function PairingTable(props: {
  readonly flows: readonly Flow[];
  readonly a: ObserverLetter;
  readonly b: ObserverLetter;
}): ReactNode {
  const { flows, a, b } = props;
  const [letterA, nameA, letterB, nameB] = [a.letter, a.name, b.letter, b.name];
  const rank = (kind: string): number => FLOW_KINDS.findIndex((one) => one === kind);
  const sorted = [...flows].sort(
    (one, other) => rank(one.kind) - rank(other.kind) || other.number - one.number,
  );
  return (
    <div className="wide" role="region" aria-label={t`Pairing balance in numbers`} tabIndex={0}>
      <table className="pairing-table">
        <caption className="for-readers">
          <Trans>
            What was paired with what: {letterA} is {nameA}, {letterB} is {nameB}
          </Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Says letter={letterA} />
            </th>
            <th scope="col">
              <Says letter={letterB} />
            </th>
            <th scope="col">
              <Trans>So they</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Birds</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {sorted.map((flow, index) => {
            const kind = FLOW_KINDS.find((one) => one === flow.kind);
            return (
              <tr key={index}>
                <td>{flow.a ? readTaxon(flow.a).common : '–'}</td>
                <td>{flow.b ? readTaxon(flow.b).common : '–'}</td>
                <td>{kind === undefined ? flow.kind : kindWords(kind, letterA, letterB)}</td>
                <td className="number">{birdsAbout(flow.number)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {sorted.every(({ number }) => Number.isInteger(number)) ? null : (
        <p className="soft small">
          <Trans>
            ≈: several pairings are equally good, so these birds are shared out among them in
            proportion.
          </Trans>
        </p>
      )}
    </div>
  );
}

function Says(props: { readonly letter: string }): ReactNode {
  const { letter } = props;
  return <Trans>{letter} says</Trans>;
}

/** Pixels that the longest label takes, near enough: a letter of this size is about 7 wide. */
function roomForLabels(flows: readonly Flow[]): number {
  const names = flows
    .flatMap(({ a, b }) => [a, b])
    .map((taxon) => (taxon ? readTaxon(taxon).common.length : 0));
  return Math.max(...names, 8) * 7.5 + 56;
}
