import { graphql, withFragments } from '../graphql/document.js';

export const MyCounts = graphql(`
  query MyCounts {
    counts {
      id
      name
      waterbody
      date
      state
      myRoles
    }
  }
`);

export const CountHead = graphql(`
  query CountHead($id: ID!) {
    count(id: $id) {
      id
      name
      waterbody
      date
      timeZone
      state
      myRoles
      may
    }
  }
`);

/** Named in documents elsewhere too. */
export const AssignmentParts = graphql(`
  fragment AssignmentParts on Assignment {
    id
    person {
      id
      name
    }
    sections {
      id
      name
    }
    window {
      id
    }
    vantage {
      id
      name
    }
    submitted
  }
`);

const coverage = graphql(`
  query CountCoverage($id: ID!) {
    count(id: $id) {
      id
      state
      may
      myRoles
      windows {
        id
        start
        end
        slackMinutes
        closed
      }
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
        hasJoined
      }
      coverage {
        section {
          id
          name
        }
        window {
          id
        }
        assigned {
          id
          name
        }
        submitted {
          id
          name
        }
        partial {
          id
          name
        }
        independentTallies
      }
      assignments {
        ...AssignmentParts
        tally {
          id
          version
          submittedAt
        }
      }
    }
  }
`);
export const CountCoverage = withFragments(coverage, AssignmentParts);

export const Assign = graphql(`
  mutation Assign($input: AssignInput!) {
    assign(input: $input) {
      id
    }
  }
`);

export const Unassign = graphql(`
  mutation Unassign($assignmentId: ID!) {
    unassign(assignmentId: $assignmentId)
  }
`);

export const CloseWindow = graphql(`
  mutation CloseWindow($countId: ID!, $windowId: ID!) {
    closeWindow(countId: $countId, windowId: $windowId) {
      id
      state
      may
      windows {
        id
        closed
      }
    }
  }
`);

export const ImportCount = graphql(`
  mutation ImportCount($files: [FolderFileInput!]!) {
    importCount(files: $files) {
      id
      name
    }
  }
`);

export const PlanCount = graphql(`
  mutation PlanCount($input: PlanCountInput!) {
    planCount(input: $input) {
      id
      name
    }
  }
`);
