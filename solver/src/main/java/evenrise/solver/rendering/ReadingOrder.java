package evenrise.solver.rendering;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/**
 * Headings, tables and figures of a document in the order in which they are read, for who hears it. The renderer knows
 * them part by part, each with a tree of its own that takes the place of the one before; here they become one tree, and
 * what leads from a page's content back into it is made anew.
 */
final class ReadingOrder {
    private static final COSName SECTION = COSName.getPDFName("Sect");
    private static final COSName TABS = COSName.getPDFName("Tabs");
    private static final COSName OBJECT_REFERENCE = COSName.getPDFName("OBJR");
    private static final COSName OBJECT = COSName.getPDFName("Obj");

    private final PdfObjects objects;
    private final COSDictionary root = new PDStructureTreeRoot().getCOSObject();
    private final COSDictionary document = new COSDictionary();
    private final List<COSObject> parts = new ArrayList<>();
    /** From pages, and from what is no content of a page, such as a link, back into the tree: number and place there. */
    private final COSArray numbers = new COSArray();

    private int next;
    /** Of each page of the part: what stands for each piece of its content. */
    private final Map<COSDictionary, COSArray> ofPages = new IdentityHashMap<>();
    /** What headers and cells say of themselves, each once. */
    private final Map<Map<COSName, COSBase>, COSDictionary> kinds = new HashMap<>();
    /** What is no content of a page: what stands for it. */
    private final Map<COSDictionary, COSDictionary> ofNotes = new IdentityHashMap<>();

    ReadingOrder(PdfObjects objects) {
        this.objects = objects;
        objects.keep(root);
        objects.keep(document);
        document.setItem(COSName.S, COSName.DOCUMENT);
        document.setItem(COSName.P, root);
        root.setItem(COSName.K, document);
    }

    /**
     * Takes over what the renderer has just written.
     *
     * @param pages of the part, none of which is written yet
     * @param isFirst whether it is read before all others
     */
    void take(PDDocument pdf, List<PDPage> pages, boolean isFirst) throws IOException {
        COSBase kids = pdf.getDocumentCatalog()
                .getCOSObject()
                .getCOSDictionary(COSName.STRUCT_TREE_ROOT)
                .getDictionaryObject(COSName.K);
        COSDictionary part = (COSDictionary) (kids instanceof COSArray array ? array.getObject(0) : kids);
        walk(part, null);
        part.setItem(COSName.S, SECTION);
        part.setItem(COSName.P, document);
        for (PDPage page : pages) {
            lead(page.getCOSObject());
        }
        parts.add(isFirst ? 0 : parts.size(), objects.write(part));
        ofPages.clear();
        ofNotes.clear();
    }

    /** From a page, and from each link on it, back into the tree. */
    private void lead(COSDictionary page) throws IOException {
        page.setInt(COSName.STRUCT_PARENTS, next);
        number(objects.write(ofPages.getOrDefault(page, new COSArray())));
        COSArray onPage = page.getCOSArray(COSName.ANNOTS);
        for (int k = 0; onPage != null && k < onPage.size(); k++) {
            COSDictionary note = (COSDictionary) onPage.getObject(k);
            if (ofNotes.containsKey(note)) {
                note.setInt(COSName.STRUCT_PARENT, next);
                number(objects.write(ofNotes.get(note)));
            }
        }
    }

    private void number(COSObject place) {
        numbers.add(COSInteger.get(next));
        numbers.add(place);
        next++;
    }

    /** Writes the root of one tree of all parts. */
    void finish(PDDocument pdf) throws IOException {
        COSArray kids = new COSArray();
        parts.forEach(kids::add);
        document.setItem(COSName.K, kids);
        COSDictionary ways = new COSDictionary();
        ways.setItem(COSName.NUMS, numbers);
        root.setItem(COSName.PARENT_TREE, ways);
        root.setInt(COSName.PARENT_TREE_NEXT_KEY, next);
        objects.writeKept(document);
        objects.writeKept(root);
        for (COSDictionary kind : kinds.values()) {
            objects.writeKept(kind);
        }
        pdf.getDocumentCatalog().getCOSObject().setItem(COSName.STRUCT_TREE_ROOT, root);
        PDMarkInfo marks = new PDMarkInfo();
        marks.setMarked(true);
        pdf.getDocumentCatalog().setMarkInfo(marks);
    }

    /** @param page on which an element stands unless it says otherwise */
    private void walk(COSDictionary element, COSDictionary page) {
        // Thousands of cells are of the same kind; what may be left out is.
        element.removeItem(COSName.TYPE);
        COSDictionary same = element.getCOSDictionary(COSName.A);
        if (same != null && !same.containsKey(COSName.BBOX)) {
            element.setItem(COSName.A, kinds.computeIfAbsent(values(same), any -> kept(same)));
        }
        COSDictionary own = element.getCOSDictionary(COSName.PG);
        COSDictionary on = own == null ? page : own;
        COSBase kids = element.getDictionaryObject(COSName.K);
        if (kids instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                kid(element, array.getObject(i), on);
            }
        } else if (kids != null) {
            kid(element, kids, on);
        }
    }

    private COSDictionary kept(COSDictionary kind) {
        objects.keep(kind);
        return kind;
    }

    private static Map<COSName, COSBase> values(COSDictionary of) {
        Map<COSName, COSBase> values = new HashMap<>();
        of.forEach(values::put);
        return values;
    }

    private void kid(COSDictionary element, COSBase kid, COSDictionary on) {
        if (kid instanceof COSNumber number) {
            put(on, number.intValue(), element);
        } else if (kid instanceof COSDictionary dictionary && dictionary.containsKey(COSName.MCID)) {
            COSDictionary page = dictionary.getCOSDictionary(COSName.PG);
            put(page == null ? on : page, dictionary.getInt(COSName.MCID), element);
        } else if (kid instanceof COSDictionary dictionary
                && OBJECT_REFERENCE.equals(dictionary.getCOSName(COSName.TYPE))) {
            ofNotes.put(dictionary.getCOSDictionary(OBJECT), element);
        } else if (kid instanceof COSDictionary dictionary) {
            walk(dictionary, on);
        }
    }

    private void put(COSDictionary page, int number, COSDictionary element) {
        COSArray on = ofPages.computeIfAbsent(page, any -> new COSArray());
        while (on.size() <= number) {
            on.add(null);
        }
        on.set(number, element);
    }
}
