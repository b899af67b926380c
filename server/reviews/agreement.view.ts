import type * as Api from '../api/generated/schema.js';
import { ownAgreement } from '../core/agree/own-agreement.js';
import type {
  Agreement,
  AgreementMeasures,
  ConfusionTable,
  Detection,
  ObserverConsistency,
  ObserverModel,
  PairAgreement,
  RatioPlot,
} from '../core/model/agreement.js';
import { saidIn } from '../core/model/saying.js';
import { sectionViews } from '../plans/plan.view.js';
import type { LoadedReview } from './loaded-review.js';
import { peopleView } from './people.view.js';

/** Agreement as the viewer may see it: what is about single observers is for leaders alone. */
export function agreementView(review: LoadedReview): Api.Agreement {
  const { agreement } = review.result;
  const { record, roles } = review.access;
  const isLeader = roles.includes('LEADER');
  return {
    minimumUnits: review.result.protocol.minimumUnits,
    overall: measuresView(agreement.overall),
    byPair: agreement.byPair.map((pair) => pairView(review, pair)),
    byTaxon: agreement.byTaxon.map((measures) => ({ ...measures })),
    bySection: agreement.bySection.map(({ place, ...measures }) => ({
      sections: sectionViews(record, place),
      measures: measuresView(measures),
    })),
    intraclass: agreement.intraclass.map(({ observers, ...forms }) => ({
      observers: observers.map((ids) => peopleView(review, ids)),
      ...forms,
    })),
    confusion: confusionView(agreement.confusion),
    detection: agreement.detection.map((detection) => detectionView(review, detection, isLeader)),
    observers: isLeader ? ratiosView(review, agreement.observers) : [],
    observerModel:
      isLeader && agreement.observerModel !== null
        ? modelView(review, agreement.observerModel)
        : null,
    observerConsistency: isLeader
      ? agreement.observerConsistency.map((consistency) => consistencyView(review, consistency))
      : [],
  };
}

/** What an observer may see of it: the pairs that they are one of, and their own ratio. */
export function ownAgreementView(review: LoadedReview): Api.OwnAgreement {
  const { byPair, ratios } = ownAgreement(review.result.agreement, review.access.viewer.personId);
  return {
    minimumUnits: review.result.protocol.minimumUnits,
    byPair: byPair.map((pair) => pairView(review, pair)),
    ratios: ratiosView(review, ratios),
  };
}

function ratiosView(review: LoadedReview, ratios: Agreement['observers']): Api.ObserverRatio[] {
  return ratios.map(({ observer, ratio }) => ({ observer: peopleView(review, observer), ratio }));
}

function pairView(
  review: LoadedReview,
  { a, b, ratios, confusion, sensitivities, ...measures }: PairAgreement,
): Api.PairAgreement {
  return {
    a: peopleView(review, a),
    b: peopleView(review, b),
    measures: measuresView(measures),
    ratios: ratioPlotView(review, ratios),
    confusion: confusionView(confusion),
    sensitivities: sensitivities.map((sensitivity) => ({ ...sensitivity })),
  };
}

function measuresView(measures: AgreementMeasures): Api.AgreementMeasures {
  return { ...measures };
}

function ratioPlotView({ result }: LoadedReview, { points, ...limits }: RatioPlot): Api.RatioPlot {
  return {
    points: points.map((point) => {
      const cell = result.cells.find(({ id }) => id === point.cell);
      const taxa = cell?.groups.find(({ id }) => id === point.group)?.taxa ?? [];
      return { ...point, taxa: [...taxa] };
    }),
    ...limits,
  };
}

function confusionView({ taxa, entries }: ConfusionTable): Api.ConfusionTable {
  return { taxa: [...taxa], entries: entries.map((entry) => ({ ...entry })) };
}

function detectionView(
  review: LoadedReview,
  { observers, cells, byObserver, model, warning, ...detection }: Detection,
  isLeader: boolean,
): Api.Detection {
  const { result, access } = review;
  const places = result.cells.filter(({ id }) => cells.includes(id)).flatMap(({ place }) => place);
  return {
    ...detection,
    observers: observers.map((ids) => peopleView(review, ids)),
    sections: sectionViews(access.record, [...new Set(places)].sort()),
    byObserver: isLeader
      ? byObserver.map(({ observer, ...each }) => ({
          observer: peopleView(review, observer),
          ...each,
        }))
      : [],
    model: model && { ...model, slopes: model.slopes.map((slope) => ({ ...slope })) },
    warning: warning && saidIn(warning, access.viewer.wording),
  };
}

function modelView(
  review: LoadedReview,
  { observers, ...model }: ObserverModel,
): Api.ObserverModel {
  return {
    ...model,
    observers: observers.map(({ observer, ...each }) => ({
      observer: peopleView(review, observer),
      ...each,
    })),
  };
}

function consistencyView(
  review: LoadedReview,
  { observers, ...consistency }: ObserverConsistency,
): Api.ObserverConsistency {
  return {
    ...consistency,
    observers: observers.map(({ observer, ...each }) => ({
      observer: peopleView(review, observer),
      ...each,
    })),
  };
}
