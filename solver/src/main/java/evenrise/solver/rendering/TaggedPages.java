package evenrise.solver.rendering;

import com.openhtmltopdf.pdfboxout.PageSupplier;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * Pages for a tagged document. Each piece of content has a mark of its own, and the library looks through all marks of a
 * page for an equal one before it adds the next: a sixth of the time of printing, and in vain.
 */
final class TaggedPages implements PageSupplier {
    /** Marks, of which no two are one. */
    private static final class Marks extends COSDictionary {
        @Override
        public boolean containsValue(Object value) {
            return false;
        }
    }

    @Override
    public PDPage requestPage(PDDocument pdf, float width, float height, int page, int shadow) {
        COSDictionary resources = new COSDictionary();
        resources.setItem(COSName.PROPERTIES, new Marks());
        PDPage next = new PDPage(new PDRectangle(width, height));
        next.setResources(new PDResources(resources));
        pdf.addPage(next);
        return next;
    }
}
