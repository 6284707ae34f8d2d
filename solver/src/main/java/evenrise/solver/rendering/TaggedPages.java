package evenrise.solver.rendering;

import com.openhtmltopdf.pdfboxout.PageSupplier;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * Pages of one tagged document. Each piece of content begins with a mark: its number on its page where it is read, that it is
 * not read where it is a background. The renderer makes a mark for each piece of each page, and each background's tells
 * where it lies, too, which nobody asks for; here all pages have one set of marks, the first piece of each page the same.
 */
final class TaggedPages implements PageSupplier {
    /** What the renderer looks for before it adds a mark: each is there once it is asked for. */
    private static final class Marks extends COSDictionary {
        private static final COSName NOT_READ = COSName.getPDFName("X");

        @Override
        public boolean containsValue(Object value) {
            return true;
        }

        @Override
        public COSName getKeyForValue(Object value) {
            COSDictionary mark = (COSDictionary) value;
            boolean isRead = mark.containsKey(COSName.MCID);
            COSName name = isRead ? COSName.getPDFName("M" + mark.getInt(COSName.MCID)) : NOT_READ;
            if (!containsKey(name)) {
                COSDictionary first = isRead ? mark : new COSDictionary();
                first.setDirect(true);
                setItem(name, first);
            }
            return name;
        }
    }

    private final COSDictionary marks = new Marks();

    /** Of all pages. */
    COSDictionary marks() {
        return marks;
    }

    @Override
    public PDPage requestPage(PDDocument pdf, float width, float height, int page, int shadow) {
        COSDictionary resources = new COSDictionary();
        resources.setItem(COSName.PROPERTIES, marks);
        PDPage next = new PDPage(new PDRectangle(width, height));
        next.setResources(new PDResources(resources));
        pdf.addPage(next);
        return next;
    }
}
