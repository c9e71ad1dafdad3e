/** Requests of a client that shows views of a build: declared in protocol.ts. */
import type { CancellationToken } from "vscode-languageserver";
import { book } from "../features/views/book.ts";
import { branch, describeThingAt } from "../features/views/branch.ts";
import { calculated } from "../features/views/calculate.ts";
import { ChosenBuild, chooseBuild } from "../features/views/chosen-build.ts";
import { overview } from "../features/views/overview.ts";
import { report } from "../features/views/report.ts";
import { stillOpen } from "../features/views/still-open.ts";
import { toOrder } from "../features/views/to-order.ts";
import { dayPlace, partPlace } from "../features/views/writing-places.ts";
import type { OfBuild, OfExpression, RecordRequests, ViewRequests } from "../protocol.ts";
import type { Session } from "../session.ts";

export function answerOfViews(session: Session): void {
  answer(session, "cotter/overview", overview);
  answer(session, "cotter/branch", (chosen, { path }) => branch(chosen, path));
  answer(session, "cotter/describe", (chosen, { path }) => describeThingAt(chosen, path));
  answer(session, "cotter/stillOpen", stillOpen);
  answer(session, "cotter/toOrder", toOrder);
  answer(session, "cotter/report", (chosen, { report: name }) => report(chosen, name));
  answer(session, "cotter/dayPlace", (chosen, { uri }) => dayPlace(chosen, logOf(session, chosen, uri)));
  answer(session, "cotter/partPlace", (chosen, { path, uri }) =>
    partPlace(chosen, path, logOf(session, chosen, uri)),
  );
  answerCalculate(session);
  answerBook(session);
}

type BuildRequest = Exclude<keyof ViewRequests, keyof RecordRequests | "cotter/calculate" | "cotter/book">;

function answer<M extends BuildRequest>(
  session: Session,
  method: M,
  compute: (chosen: ChosenBuild, params: ViewRequests[M]["params"]) => ViewRequests[M]["result"],
): void {
  session.connection.onRequest(method, (params: ViewRequests[M]["params"], token: CancellationToken) =>
    session.answerOfAll<ViewRequests[M]["result"] | null>(token, null, () => {
      const chosen = chosenBuild(session, params);
      return chosen === undefined ? null : compute(chosen, params);
    }),
  );
}

/** Answered without a build too: then without its names. */
function answerCalculate(session: Session): void {
  session.connection.onRequest("cotter/calculate", (params: OfExpression, token: CancellationToken) =>
    session.answerOfAll(token, null, () =>
      calculated(chosenBuild(session, params)?.build, params.expression),
    ),
  );
}

/** Photos are read meanwhile: the book is of the build as it was when it was asked for. */
function answerBook(session: Session): void {
  session.connection.onRequest("cotter/book", async (params: OfBuild, token: CancellationToken) => {
    const chosen = await session.answerOfAll(token, undefined, () => chosenBuild(session, params));
    return chosen === undefined ? null : await book(chosen, session.host.readPhotos);
  });
}

export function chosenBuild(session: Session, { uri }: OfBuild): ChosenBuild | undefined {
  const { workspace } = session;
  const ofLog = uri === null ? undefined : workspace.buildOf(session.pathOf(uri));
  const snapshot = chooseBuild(workspace.everyBuild(), ofLog);
  return snapshot && new ChosenBuild(snapshot, (path) => session.uriOf(path));
}

function logOf(session: Session, { snapshot }: ChosenBuild, uri: string | null) {
  return uri === null ? undefined : snapshot.log(session.pathOf(uri));
}
