/** The extension at home in the editor, whatever it runs in: views, status, commands, panels, photos. */
import type { ExtensionContext } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { ReportName, Spot, TwoSided } from "../server/language-server/protocol.ts";
import { askToBeTold, logsOf, tellOfTrust } from "./client-options.ts";
import { checkReading } from "./commands/check-reading.ts";
import { newDay } from "./commands/new-day.ts";
import { newPart } from "./commands/new-part.ts";
import { openExample } from "./commands/open-example.ts";
import { restartServer } from "./commands/restart-server.ts";
import { saveBook, saveReport } from "./commands/save-page.ts";
import { startDiary } from "./commands/start-diary.ts";
import type { AtWork } from "./first.ts";
import { goTo } from "./go-to.ts";
import { ReportPanels } from "./panels/report-panels.ts";
import { takePhotos } from "./photos/drop-photo.ts";
import { insertPhoto } from "./photos/insert-photo.ts";
import { compareWithRevision } from "./record/compare-with-revision.ts";
import { ComparisonView } from "./record/comparison-view.ts";
import { historyOfThing } from "./record/history-of-thing.ts";
import { offerRecordedTexts } from "./record/recorded-texts.ts";
import { showTwoSided } from "./record/show-two-sided.ts";
import { ShownBuild } from "./shown-build.ts";
import { startInBackground } from "./start.ts";
import { showStatus } from "./status.ts";
import { asItStands } from "./views/as-it-stands.ts";
import { stillOpen } from "./views/still-open.ts";
import { toOrder } from "./views/to-order.ts";

/** @param schemes of the files that are logs */
export function goToWork(
  context: ExtensionContext,
  client: BaseLanguageClient,
  schemes: readonly string[],
): AtWork {
  const { extensionUri, subscriptions } = context;
  askToBeTold(client);
  const shown = new ShownBuild(client, logsOf(schemes));
  const comparison = new ComparisonView(shown);
  const panels = new ReportPanels(shown, extensionUri);
  subscriptions.push(
    client,
    shown,
    panels,
    asItStands(shown),
    stillOpen(shown),
    toOrder(shown),
    comparison,
    offerRecordedTexts(shown),
    showStatus(shown),
    tellOfTrust(client),
    takePhotos(shown, logsOf(schemes)),
  );
  startInBackground(client);
  const open = (name: ReportName) => () => panels.open(name);
  return {
    handlers: {
      goTo: (spot: Spot) => goTo(shown, spot),
      startDiary,
      newDay: () => newDay(shown),
      newPart: () => newPart(shown),
      insertPhoto: () => insertPhoto(shown),
      openOrder: open("order"),
      openTimeline: open("timeline"),
      openJoints: open("joints"),
      openOutstanding: open("outstanding"),
      openCosts: open("costs"),
      saveReport: () => (panels.active === undefined ? undefined : saveReport(shown, panels.active)),
      saveBook: () => saveBook(shown),
      checkReading: () => checkReading(shown),
      compareWithRevision: () => compareWithRevision(shown, comparison),
      closeComparison: () => comparison.close(),
      showChange: (log: string | null, at: TwoSided) => showTwoSided(shown, log, at),
      historyOfThing: () => historyOfThing(shown),
      openExample: () => openExample(extensionUri),
      restartServer: () => restartServer(client),
    },
    bringBack: (panel, state) => panels.bringBack(panel, state),
    outputChannel: client.outputChannel,
    // On its way up it cannot be stopped; it ends with its connection.
    stop: async () => {
      if (client.isRunning()) await client.stop();
    },
  };
}
