import { graphql, withFragments } from '../graphql/document.js';
import { AssignmentParts } from '../plans/documents.js';

const assignments = graphql(`
  query MyAssignments($id: ID!) {
    me {
      id
      name
    }
    count(id: $id) {
      id
      name
      waterbody
      date
      timeZone
      sections {
        id
        name
        polygon
      }
      vantages {
        id
        name
        position
        views
      }
      expectedTaxa {
        taxon
        years
      }
      shoreline {
        isArea
        lines
      }
      people {
        person {
          id
          name
        }
        roles
      }
      assignments {
        ...AssignmentParts
        window {
          start
          end
          closed
        }
      }
      myTallies {
        ...OwnTally
      }
      queries {
        id
        about
        question
        askedAt
        askedBy {
          id
          name
        }
        to {
          id
          name
        }
        answer
        answeredAt
      }
    }
  }

  fragment OwnTally on Tally {
    id
    sections {
      id
      name
    }
    window {
      id
    }
    vantage {
      id
    }
    party {
      id
      name
    }
    start
    end
    scope
    coverage
    seenArea
    conditions {
      visibility
      beaufort
      seaState
      iceCover
      glare
      disturbance
      optics
    }
    submittedAt
    version
    replaces
    reason
    total
    lines {
      id
      written
      taxon
      candidates
      number
      low
      high
      present
      method
      totalMethod
      block
      male
      female
      adult
      immature
      activity
      time
      lon
      lat
      flock
      heading
      from
      to
      certainty
      note
      marks {
        mark
        state
      }
    }
    samples {
      raft
      sample
      taxon
      number
    }
  }
`);
export const MyAssignments = withFragments(assignments, AssignmentParts);

export const SubmitTally = graphql(`
  mutation SubmitTally($input: TallyInput!) {
    submitTally(input: $input) {
      id
      version
      total
      submittedAt
    }
  }
`);

export const AnswerQuery = graphql(`
  mutation AnswerQuery($queryId: ID!, $answer: String!) {
    answerQuery(queryId: $queryId, answer: $answer) {
      id
      answer
      answeredAt
    }
  }
`);
