package evenrise.solver.desk;

import evenrise.solver.app.DrawnDocuments;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.Jobs;
import evenrise.solver.desk.DocumentAnswers.FileView;
import evenrise.solver.desk.DocumentAnswers.MailedView;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The page of the plan on the desk, for whoever is to look at it elsewhere and to try moves. */
final class MailedPage implements DeskPart {
    static final String FOLDER = "mailed";

    private static final String PIECES = "/mailed/";
    private static final int MOST_PAGES = 2;
    private static final int LONGEST_REVISION = 40;
    private static final Pattern PIECE = Pattern.compile("([0-9]{1,9})/([a-z]+[.]html)");

    private record Made(int number, DrawnDocuments documents) {}

    private final Desk desk;
    private final SetDrawing drawing;
    private final KeptDigests kept;
    /** The last first, then the one before, which another window may still be fetching. */
    private final Deque<Made> pages = new ArrayDeque<>();

    private int made;

    MailedPage(Desk desk, DeskFiles files, Jobs jobs) {
        Branches branches = new Branches(files, desk);
        this.desk = desk;
        this.drawing = new SetDrawing(files, branches, jobs);
        this.kept = new KeptDigests(branches);
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/documents/mail",
                "The page of the plan, to be mailed, is written into a folder of its own; its plan is kept",
                DocumentRequests.Mail.class,
                MailedView.class,
                this::make);
        routes.pieces(PIECES, this::piece);
    }

    private synchronized MailedView make(DocumentRequests.Mail asked) {
        JudgedState now = desk.judged();
        DrawnDocuments page = drawing.of(
                now.state(),
                new DocumentRequests.Draw(
                        asked.revision(),
                        asked.date(),
                        List.of("html"),
                        List.of(),
                        asked.against(),
                        0,
                        List.of(),
                        "",
                        "",
                        false,
                        false,
                        asked.title()),
                JobControl.NONE);
        List<String> names = page.write(drawing.folder(FOLDER), false);
        pages.addFirst(new Made(++made, page));
        if (pages.size() > MOST_PAGES) {
            pages.removeLast().documents().close();
        }
        return new MailedView(
                made,
                FOLDER,
                names.stream()
                        .map(name -> new FileView(name, page.file(name).orElseThrow().length))
                        .toList(),
                kept.keep(name(asked.revision()), now),
                page.evaluation().assessment().headline());
    }

    /** Of letters that a name may have, whatever a revision is called. */
    private static String name(String revision) {
        String harmless = revision.replaceAll("[^\\p{L}\\p{N}_-]", " ").strip();
        return (FOLDER + " "
                        + (harmless.isEmpty()
                                ? "A"
                                : harmless.substring(0, Math.min(harmless.length(), LONGEST_REVISION))))
                .strip();
    }

    private synchronized Optional<DeskFace.Piece> piece(String path) {
        Matcher asked = PIECE.matcher(path);
        return !asked.matches()
                ? Optional.empty()
                : pages.stream()
                        .filter(each -> each.number() == Integer.parseInt(asked.group(1)))
                        .findFirst()
                        .flatMap(each -> each.documents().file(asked.group(2)))
                        .map(DrawnSet::framed);
    }
}
