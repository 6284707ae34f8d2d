package evenrise.solver.desk;

import evenrise.solver.app.CancelSwitch;
import evenrise.solver.app.DocumentFormat;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.LabelOrder;
import evenrise.solver.desk.DocumentAnswers.DocumentsView;
import evenrise.solver.desk.DocumentAnswers.FileTables;
import evenrise.solver.desk.DocumentAnswers.SectionView;
import evenrise.solver.desk.DocumentAnswers.SheetView;
import evenrise.solver.desk.DocumentAnswers.WrittenView;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Documents of what lies on the desk: drawn and looked at, then written as they were seen. */
final class DocumentWork implements DeskPart {
    private static final String PIECES = "/drawn/";
    private static final int MOST_SETS = 2;
    private static final Pattern PIECE = Pattern.compile("([0-9]{1,9})/(.+)");

    private final Desk desk;
    private final Branches branches;
    private final SetDrawing drawing;
    /** The last first, then the one before, which windows may still be looking at. */
    private final Deque<DrawnSet> sets = new ArrayDeque<>();

    private int drawnSets;
    private volatile CancelSwitch running = new CancelSwitch();

    DocumentWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.branches = new Branches(files, desk);
        this.drawing = new SetDrawing(files, branches, jobs);
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown(
                "/api/documents",
                "What documents can be drawn, and what was drawn last",
                DocumentsView.class,
                this::view);
        routes.asked(
                "/api/documents/draw",
                "Documents of what lies on the desk are drawn, to be looked at; the title block is kept",
                DocumentRequests.Draw.class,
                DocumentsView.class,
                this::draw);
        routes.asked(
                "/api/documents/stop",
                "What is being drawn is drawn no further, and nothing of it is kept",
                DeskRequests.Bare.class,
                DocumentsView.class,
                any -> stop());
        routes.asked(
                "/api/documents/tables",
                "Tables of a drawn file, as whoever opens it has them",
                DocumentRequests.Look.class,
                FileTables.class,
                this::tables);
        routes.asked(
                "/api/documents/write",
                "What was drawn is written into a folder beside the project's file",
                DocumentRequests.Write.class,
                WrittenView.class,
                this::write);
        routes.pieces(PIECES, this::piece);
    }

    private synchronized DocumentsView view() {
        Map<String, String> titles =
                last().map(each -> each.documents().sections()).orElse(Map.of());
        return new DocumentsView(
                DocumentSet.sectionWords().stream()
                        .map(word -> new SectionView(word, titles.getOrDefault(word, "")))
                        .toList(),
                DocumentFormat.ALL.stream().map(DocumentFormat::word).toList(),
                branches.names(),
                LabelOrder.kinds(),
                LabelOrder.knownStocks(),
                DocumentSet.languages(),
                drawing.date(""),
                SetDrawing.TITLE_FILE,
                drawing.title(),
                last().map(each -> each.view(isOfNow(each))));
    }

    private Optional<DrawnSet> last() {
        return Optional.ofNullable(sets.peekFirst());
    }

    private boolean isOfNow(DrawnSet set) {
        return desk.state().filter(now -> now == set.state()).isPresent();
    }

    private DocumentsView draw(DocumentRequests.Draw asked) {
        // One at a time, while others look at what is there.
        synchronized (drawing) {
            add(drawn(asked));
            return view();
        }
    }

    private DocumentsView stop() {
        running.cancel();
        return view();
    }

    private synchronized void add(DrawnSet set) {
        sets.addFirst(set);
        if (sets.size() > MOST_SETS) {
            sets.removeLast().documents().close();
        }
    }

    private DrawnSet drawn(DocumentRequests.Draw asked) {
        DeskState state = desk.judged().state();
        CancelSwitch cancel = new CancelSwitch();
        running = cancel;
        return new DrawnSet(
                ++drawnSets,
                state,
                asked,
                drawing.date(asked.date()),
                drawing.of(state, asked, new JobControl(new DrawingTold(desk), cancel)));
    }

    private synchronized FileTables tables(DocumentRequests.Look asked) {
        return new FileTables(
                asked.file(),
                drawn(asked.drawn()).documents().tables(asked.file()).stream()
                        .map(each -> new SheetView(each.name(), each.rows(), each.all()))
                        .toList());
    }

    private synchronized WrittenView write(DocumentRequests.Write asked) {
        DrawnSet set = drawn(asked.drawn());
        if (!isOfNow(set)) {
            throw refused("the plan or its project is another than when these were drawn. Draw them anew.");
        }
        set.documents().write(drawing.folder(asked.folder()), asked.overwrite());
        if (!asked.keepAs().isEmpty()) {
            branches.keep(asked.keepAs());
        }
        return new WrittenView(
                asked.folder(), set.files(), Optional.of(asked.keepAs()).filter(each -> !each.isEmpty()));
    }

    private DrawnSet drawn(int number) {
        return numbered(number)
                .orElseThrow(
                        () -> refused("these were drawn anew meanwhile, maybe in another window. Look at them again."));
    }

    private Optional<DeskFace.Piece> piece(String path) {
        Matcher asked = PIECE.matcher(path);
        return asked.matches()
                ? numbered(Integer.parseInt(asked.group(1))).flatMap(each -> each.piece(asked.group(2)))
                : Optional.empty();
    }

    private synchronized Optional<DrawnSet> numbered(int number) {
        return sets.stream().filter(each -> each.number() == number).findFirst();
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
