package evenrise.solver.desk;

import evenrise.model.answer.HandMove;
import evenrise.model.contract.Harmless;
import evenrise.model.file.MovesFile;
import evenrise.model.file.Problem;
import evenrise.model.file.Reading;
import evenrise.model.handout.PlanDigest;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.LoadMove;
import evenrise.model.plan.Plan;
import evenrise.model.plan.PlanMoves;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.app.AuditRequest;
import evenrise.solver.app.ExplainRequest;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Listing;
import evenrise.solver.app.Source;
import evenrise.solver.app.TextStyle;
import evenrise.solver.desk.DeskAnswers.BranchesView;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.EditedView;
import evenrise.solver.desk.DeskAnswers.HangingView;
import evenrise.solver.desk.DeskAnswers.Lines;
import evenrise.solver.desk.DeskAnswers.ReadListView;
import evenrise.solver.desk.DeskAnswers.SearchView;
import evenrise.solver.desk.DeskAnswers.SideBySide;
import evenrise.solver.desk.DeskAnswers.TableView;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What can be done at the desk, each from what is asked to what is answered. */
final class DeskWork {
    private final Desk desk;
    private final Jobs jobs;
    private final DeskSearch search;
    private final Branches branches;
    private final Pins pins;
    private final PastedLists lists;
    private final TableWork tables;

    DeskWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.jobs = jobs;
        this.search = new DeskSearch(desk, jobs);
        this.branches = new Branches(files, desk);
        this.pins = new Pins(jobs);
        this.lists = new PastedLists(jobs);
        this.tables = new TableWork(desk);
    }

    DeskSheet sheet() {
        return desk.sheet();
    }

    DeskSheet undo() {
        desk.undo();
        return desk.sheet();
    }

    DeskSheet redo() {
        desk.redo();
        return desk.sheet();
    }

    DeskSheet move(DeskRequests.Move asked) {
        desk.changePlan(words(asked), now -> moved(now, asked));
        return desk.sheet();
    }

    /** What somebody has tried on a page of the plan on the desk comes onto it. */
    DeskSheet takeMoves(DeskRequests.ReturnedMoves asked) {
        Reading<PlanMoves> reading = MovesFile.read(
                new ByteArrayInputStream(asked.text().getBytes(StandardCharsets.UTF_8)), "the file that came back");
        PlanMoves moves = reading.value()
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.INPUT,
                        reading.problems().stream().map(Problem::message).toList()));
        KeptDigests kept = new KeptDigests(branches);
        desk.changePlan("moves that came back", now -> returned(now, moves, kept));
        return desk.sheet();
    }

    private static Plan returned(JudgedState now, PlanMoves moves, KeptDigests kept) {
        if (!moves.planSha256().equals(PlanDigest.sha256(now.layout().plan()))) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "these moves begin at a plan that places or sets something else than the one on the desk. Open the"
                            + " plan that the page was made of"
                            + kept.named(moves.planSha256(), now)
                                    .map(name -> ", kept as '" + name + "'")
                                    .orElse("")
                            + ".");
        }
        return HandMove.after(now.layout(), moves.moves());
    }

    private static Plan moved(JudgedState now, DeskRequests.Move asked) {
        LoadMove move = LoadMove.builder()
                .load(asked.load())
                .panel(asked.panel())
                .slot(asked.slot())
                .board(asked.board())
                .output(asked.output())
                .onSeconds(asked.onSeconds())
                .build();
        return new HandMove(now.layout(), asked.load()).to(move);
    }

    private static String words(DeskRequests.Move asked) {
        String load = Harmless.shown(asked.load());
        if (asked.panel().isPresent() && asked.slot().isPresent()) {
            return load + " to " + Harmless.shown(asked.panel().get()) + ", slot "
                    + asked.slot().getAsInt();
        }
        if (asked.board().isPresent() && asked.output().isPresent()) {
            return load + " to " + Harmless.shown(asked.board().get()) + ", output "
                    + asked.output().getAsInt();
        }
        return asked.onSeconds().isPresent()
                ? load + " at " + asked.onSeconds().getAsDouble() + " s"
                : load + " lifted off";
    }

    HangingView hang(DeskRequests.Hang asked) {
        JudgedState now = desk.judged();
        return new HangingView(
                asked.load(),
                desk.revision(),
                new Hanging(now.layout(), now.verdict(), asked.load()).freePlaces(Set.copyOf(asked.panels())));
    }

    HangingView tried(DeskRequests.Move asked) {
        JudgedState now = desk.judged();
        Hanging hanging = new Hanging(now.layout(), now.verdict(), asked.load());
        boolean isSlot = asked.panel().isPresent() && asked.slot().isPresent();
        if (!isSlot && (asked.board().isEmpty() || asked.output().isEmpty())) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "say a panel and a slot, or a board and an output.");
        }
        return new HangingView(
                asked.load(),
                desk.revision(),
                List.of(
                        isSlot
                                ? hanging.slot(asked.panel().get(), asked.slot().getAsInt())
                                : hanging.output(
                                        asked.board().get(), asked.output().getAsInt())));
    }

    DeskSheet set(DeskRequests.Setting asked) {
        BoardSetting setting = new BoardSetting(asked.board(), asked.startDelaySeconds(), asked.stepSeconds());
        desk.changePlan(Harmless.shown(asked.board()) + " set anew", now -> {
            if (now.layout().index().board(asked.board()).isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST, "the project has no board '" + Harmless.shown(asked.board()) + "'.");
            }
            Plan plan = now.state().plan();
            return PlanFinisher.timed(
                    now.layout().index(),
                    plan.withBoards(plan.boards().stream()
                            .map(each -> each.id().equals(asked.board()) ? setting : each)
                            .toList()));
        });
        return desk.sheet();
    }

    TableView table(String list) {
        return tables.table(list);
    }

    EditedView edit(DeskRequests.Cells asked) {
        return tables.edit(asked);
    }

    DeskSheet pin(DeskRequests.Pin asked) {
        desk.change(
                asked.pinned() ? "pinned" : "set free",
                now -> now.state()
                        .under(pins.pinned(now.state(), asked), now.state().notes()));
        return desk.sheet();
    }

    SearchView search() {
        return search.view();
    }

    SearchView begin(DeskRequests.Search asked) {
        search.begin(asked);
        return search.view();
    }

    SearchView stop() {
        search.stop();
        return search.view();
    }

    DeskSheet take() {
        search.take();
        return desk.sheet();
    }

    BranchesView branches() {
        return new BranchesView(branches.all());
    }

    BranchesView keep(DeskRequests.Named asked) {
        branches.keep(asked.name());
        return branches();
    }

    SideBySide compare(DeskRequests.Pair asked) {
        return branches.compare(asked.left(), asked.right());
    }

    DeskSheet open(DeskRequests.Named asked) {
        branches.open(asked.name());
        return desk.sheet();
    }

    Lines why(DeskRequests.Why asked) {
        DeskState state = desk.judged().state();
        Source project = Source.of(state.project());
        Source plan = Source.of(state.plan());
        Listing answer;
        if (asked.load().isPresent()) {
            answer = jobs.explain(new ExplainRequest(project, plan, asked.load().get(), Optional.empty(), false));
        } else if (asked.rule().isPresent()) {
            answer = jobs.explainRule(
                    new AuditRequest(project, plan), asked.rule().get());
        } else {
            answer = jobs.explainPeak(new AuditRequest(project, plan), JobControl.NONE);
        }
        return new Lines(answer.text(TextStyle.PLAIN));
    }

    ReadListView read(DeskRequests.PastedList asked) {
        return lists.read(asked);
    }

    DeskSheet takeList(DeskRequests.PastedList asked) {
        desk.put("pasted list", lists.taken(asked));
        return desk.sheet();
    }

    /** Ends what runs in the background. */
    void close() {
        search.stop();
    }
}
