package evenrise.solver.desk;

import evenrise.solver.app.DrawnDocuments;
import evenrise.solver.desk.DocumentAnswers.AnewView;
import evenrise.solver.desk.DocumentAnswers.DrawnView;
import evenrise.solver.desk.DocumentAnswers.FileView;
import evenrise.solver.desk.DocumentAnswers.PageView;
import evenrise.solver.desk.DocumentAnswers.PaperView;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Documents that were drawn, as windows look at them before they are written.
 *
 * @param state what lay on the desk then
 */
record DrawnSet(int number, DeskState state, DocumentRequests.Draw asked, String date, DrawnDocuments documents) {
    /** A thumbnail, and a page to be read. */
    private static final int SMALL = 240;

    private static final int LARGE = 1400;
    private static final String DRAWING = ".dxf.svg";
    private static final Pattern PICTURE = Pattern.compile("([a-z0-9-]+[.]pdf)/([0-9]{1,5})(-small)?[.]png");
    private static final Pattern POLICY =
            Pattern.compile("<meta http-equiv=\"Content-Security-Policy\" content=\"([^\"]+)\">");

    DrawnView view(boolean isOfNow) {
        return new DrawnView(
                number,
                isOfNow,
                documents.evaluation().assessment().headline(),
                documents.evaluation().assessment().isBroken(),
                asked.revision(),
                date,
                asked.against(),
                usualPaper(),
                documents.printed().stream()
                        .map(file -> new PaperView(
                                file,
                                documents.pages(file).stream()
                                        .map(each -> new PageView(each.sheet(), each.title(), each.shape()))
                                        .toList()))
                        .toList(),
                files(),
                documents.changed().stream()
                        .map(each -> new AnewView(each.sheet(), each.part(), each.rows()))
                        .toList());
    }

    /** The sheets on the paper of the project's country, where sheets are among the files. */
    private String usualPaper() {
        String usual = documents.isOnLetter() ? "plan-letter.pdf" : "plan-a4.pdf";
        return documents.printed().contains(usual)
                ? usual
                : documents.printed().stream().findFirst().orElse("");
    }

    List<FileView> files() {
        return documents.names().stream()
                .map(each -> new FileView(each, documents.file(each).orElseThrow().length))
                .toList();
    }

    /** A page or a drawing as a picture, or the page for browsers, which is framed as if it came from elsewhere. */
    Optional<DeskFace.Piece> piece(String path) {
        Matcher picture = PICTURE.matcher(path);
        if (picture.matches()) {
            return documents
                    .picture(
                            picture.group(1),
                            Integer.parseInt(picture.group(2)),
                            picture.group(3) == null ? LARGE : SMALL)
                    .map(bytes -> new DeskFace.Piece("image/png", bytes));
        }
        if (path.endsWith(DRAWING)) {
            return documents
                    .drawing(path.substring(0, path.length() - DRAWING.length()) + ".dxf")
                    .map(bytes -> new DeskFace.Piece("image/svg+xml", bytes));
        }
        return path.endsWith(".html") ? documents.file(path).map(DrawnSet::framed) : Optional.empty();
    }

    /** Its own policy, which knows its script by hash, in a frame without rights to the desk. */
    static DeskFace.Piece framed(byte[] page) {
        Matcher own = POLICY.matcher(new String(page, StandardCharsets.UTF_8));
        String policy = own.find() ? own.group(1) : "default-src 'none'";
        return new DeskFace.Piece(
                "text/html; charset=utf-8",
                page,
                Optional.of(policy + "; sandbox allow-scripts; frame-ancestors 'self'"));
    }
}
