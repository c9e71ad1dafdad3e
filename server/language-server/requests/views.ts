/** Requests of a client that shows views of a build: declared in protocol.ts. */
import type { CancellationToken } from "vscode-languageserver";
import { branch } from "../features/views/branch.ts";
import { ChosenBuild, chooseBuild } from "../features/views/chosen-build.ts";
import { overview } from "../features/views/overview.ts";
import { stillOpen } from "../features/views/still-open.ts";
import { toOrder } from "../features/views/to-order.ts";
import { dayPlace, partPlace } from "../features/views/writing-places.ts";
import type { OfBuild, OfExpression, RecordRequests, ViewRequests } from "../protocol.ts";
import type { Session } from "../session.ts";

const loadDescribe = () => import("../features/views/describe.ts");
const loadReport = () => import("../features/views/report.ts");

export function answerOfViews(session: Session): void {
  answer(session, "cotter/overview", overview);
  answer(session, "cotter/branch", (chosen, { path }) => branch(chosen, path));
  answerLate(session, "cotter/describe", loadDescribe, ({ describeThingAt }, chosen, { path }) =>
    describeThingAt(chosen, path),
  );
  answer(session, "cotter/stillOpen", stillOpen);
  answer(session, "cotter/toOrder", toOrder);
  answerLate(session, "cotter/report", loadReport, ({ report }, chosen, { report: name }) =>
    report(chosen, name),
  );
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
  answerLate(
    session,
    method,
    () => Promise.resolve(compute),
    (feature, chosen, params) => feature(chosen, params),
  );
}

/** The same with a feature that is loaded when it is first asked for. */
function answerLate<M extends BuildRequest, F>(
  session: Session,
  method: M,
  load: () => Promise<F>,
  compute: (feature: F, chosen: ChosenBuild, params: ViewRequests[M]["params"]) => ViewRequests[M]["result"],
): void {
  session.connection.onRequest(
    method,
    async (params: ViewRequests[M]["params"], token: CancellationToken) => {
      const feature = await load();
      return session.answerOfAll<ViewRequests[M]["result"] | null>(token, null, () => {
        const chosen = chosenBuild(session, params);
        return chosen === undefined ? null : compute(feature, chosen, params);
      });
    },
  );
}

/** Answered without a build too: then without its names. */
function answerCalculate(session: Session): void {
  session.connection.onRequest("cotter/calculate", async (params: OfExpression, token: CancellationToken) => {
    const { calculated } = await import("../features/views/calculate.ts");
    return session.answerOfAll(token, null, () =>
      calculated(chosenBuild(session, params)?.build, params.expression),
    );
  });
}

/** Photos are read meanwhile: the book is of the build as it was when it was asked for. */
function answerBook(session: Session): void {
  session.connection.onRequest("cotter/book", async (params: OfBuild, token: CancellationToken) => {
    const chosen = await session.answerOfAll(token, undefined, () => chosenBuild(session, params));
    const { book } = await import("../features/views/book.ts");
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
