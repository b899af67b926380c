import { describe, expect, it } from 'vitest';

import { checkProtocol } from '../../../server/core/model/check-protocol.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { faultSentence, type Fault } from '../../../server/core/model/fault.js';

const KNOWN = {
  people: ['o1', 'o2'],
  sections: ['s1'],
  windows: ['w1'],
  vantages: [],
  waters: new Map(),
};

function check(value: unknown) {
  const faults: Fault[] = [];
  const protocol = checkProtocol(value, 'count.json', KNOWN, faults);
  return { protocol, sentences: faults.map(faultSentence) };
}

describe('checkProtocol', () => {
  it.each([[undefined], [null], [{}]])('has a default for every key: %j', (value) => {
    expect(check(value)).toEqual({ protocol: defaultProtocol, sentences: [] });
  });

  it('replaces the look-alike list by one that is given, pairs and list sorted', () => {
    const lookAlikes = [
      ['Greater Scaup', 'LESC'],
      ['Mallard', 'Gadwall'],
    ];
    expect(check({ lookAlikes }).protocol.lookAlikes).toEqual([
      ['Anas platyrhynchos', 'Mareca strepera'],
      ['Aythya affinis', 'Aythya marila'],
    ]);
    expect(check({ lookAlikes: [] }).protocol.lookAlikes).toEqual([]);
  });

  it('reads one designated observer as that of every section', () => {
    expect(check({ rule: 'designated', designated: 'o1' })).toMatchObject({
      protocol: { designated: { '*': 'o1' } },
      sentences: [],
    });
    const bySection = { s1: 'o2', '*': 'o1' };
    expect(check({ designated: bySection }).protocol.designated).toEqual(bySection);
  });

  it('replaces the counting error of the methods that are named', () => {
    const block = [
      { upTo: 100, cv: 0.1 },
      { upTo: null, cv: 0.37 },
    ];
    const { protocol, sentences } = check({ countingError: { block } });
    expect(sentences).toEqual([]);
    expect(protocol.countingError).toEqual({ ...defaultProtocol.countingError, block });
  });

  it.each([
    [
      { seriousAt: 1 },
      'key protocol.seriousAt: questionedAt 2 is above seriousAt 1. Expected questionedAt not above seriousAt.',
    ],
    [
      { questionedAt: 4 },
      'key protocol.questionedAt: questionedAt 4 is above seriousAt 3. Expected questionedAt not above seriousAt.',
    ],
    [
      { windows: 'w2' },
      'key protocol.windows: "w2" is neither highest, mean nor a window of this count. Expected highest, mean or w1.',
    ],
    [
      { rule: 'designated' },
      'key protocol.designated: the rule is designated, but no observer is named. Expected a person id, or one for each section.',
    ],
    [
      { designated: 'o3' },
      'key protocol.designated: "o3" is not a person of this count. Expected o1 or o2.',
    ],
    [
      { lookAlikes: [['scaup sp.', 'Redhead']] },
      'key protocol.lookAlikes[0][0]: "scaup sp." stands for several species. Expected one species.',
    ],
    [
      { countingError: { guess: [{ upTo: 5, cv: 0.5 }] } },
      'key protocol.countingError.guess[0].upTo: the last step does not cover the largest flocks. Expected null in the last step.',
    ],
    [
      { signOffs: ['observer'] },
      'key protocol.signOffs[0]: "observer" cannot sign off. Expected a list of leader or compiler, at least one.',
    ],
    [{ zeros: 1 }, 'key protocol.zeros: 1 is of the wrong kind. Expected missed, absent.'],
  ])('refuses %j', (value, sentence) => {
    expect(check(value).sentences).toEqual([`count.json, ${sentence}`]);
  });

  it('refuses a key that it does not know, and names the nearest', () => {
    const { sentences } = check({ linkTreshold: 0.5 });
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(
      /^count\.json, key protocol\.linkTreshold: .* Did you mean linkThreshold\?$/u,
    );
  });
});
