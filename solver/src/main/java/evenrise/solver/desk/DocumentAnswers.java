package evenrise.solver.desk;

import evenrise.model.project.TitleBlock;
import java.util.List;
import java.util.Optional;

/** What windows are told of documents. */
public final class DocumentAnswers {
    private DocumentAnswers() {}

    /** @param title empty where the document has nothing for it, or nothing was drawn yet */
    public record SectionView(String word, String title) {}

    /**
     * A printed page.
     *
     * @param sheet its number; empty where it has none
     * @param shape width by height
     */
    public record PageView(String sheet, String title, double shape) {}

    /** A file of printed sheets. */
    public record PaperView(String file, List<PageView> pages) {}

    /** @param bytes its size */
    public record FileView(String name, long bytes) {}

    /** What is to be handed out anew against the earlier plan. */
    public record AnewView(String sheet, String part, int rows) {}

    /**
     * A set that was drawn.
     *
     * @param isOfNow whether it shows what lies on the desk
     * @param headline what judging says of the plan
     * @param usualPaper file on the paper of the project's country
     * @param against kept plan that changes are marked against; empty without one
     */
    public record DrawnView(
            int drawn,
            boolean isOfNow,
            String headline,
            boolean isBroken,
            String revision,
            String date,
            String against,
            String usualPaper,
            List<PaperView> papers,
            List<FileView> files,
            List<AnewView> anew) {}

    /**
     * What can be asked for, and what was drawn last.
     *
     * @param kept names of kept plans
     * @param labelKinds what labels on stock sheets are for
     * @param stocks names of stock sheets that are known
     * @param languages of site sheets and labels
     * @param titleFile name of the file that keeps the title block
     */
    public record DocumentsView(
            List<SectionView> sections,
            List<String> formats,
            List<String> kept,
            List<String> labelKinds,
            List<String> stocks,
            List<String> languages,
            String today,
            String titleFile,
            TitleBlock title,
            Optional<DrawnView> drawn) {}

    /** @param all how many rows there are; the first of them are told */
    public record SheetView(String name, List<List<String>> rows, int all) {}

    /** Tables of a drawn file. */
    public record FileTables(String file, List<SheetView> sheets) {}

    /**
     * The page that was made to be mailed.
     *
     * @param made number under which it can be had
     * @param folder its own name, beside the project's file
     * @param keptAs name under which its plan is kept, so that moves that come back find it
     */
    public record MailedView(int made, String folder, List<FileView> files, String keptAs, String headline) {}

    /** @param folder its own name, beside the project's file */
    public record WrittenView(String folder, List<FileView> files, Optional<String> keptAs) {}
}
