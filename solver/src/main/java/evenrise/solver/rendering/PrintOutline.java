package evenrise.solver.rendering;

import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;

/** The outline that a reader shows beside the pages. */
final class PrintOutline {
    private final TaggedFile file;
    private final PDDocumentOutline root = new PDDocumentOutline();
    private PDOutlineItem section;

    PrintOutline(TaggedFile file) {
        this.file = file;
        file.whole().getDocumentCatalog().setDocumentOutline(root);
    }

    /** @param page from 0 */
    void section(String title, int page) {
        section = item(title, page);
        root.addLast(section);
    }

    /** Below the last section. */
    void within(String title, int page) {
        section.addLast(item(title, page));
    }

    private PDOutlineItem item(String title, int page) {
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(title);
        item.setDestination(file.page(page));
        return item;
    }
}
