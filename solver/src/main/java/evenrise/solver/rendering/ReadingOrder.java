package evenrise.solver.rendering;

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
import org.apache.pdfbox.pdmodel.PDDocument;
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

    private final PDDocument pdf;
    private final List<COSDictionary> parts = new ArrayList<>();
    /** Of each page: what stands for each piece of its content. */
    private final Map<COSDictionary, COSArray> ofPages = new IdentityHashMap<>();
    /** What headers and cells say of themselves, each once. */
    private final Map<Map<COSName, COSBase>, COSDictionary> kinds = new HashMap<>();
    /** What is no content of a page, such as a link: what stands for it. */
    private final Map<COSDictionary, COSDictionary> ofNotes = new IdentityHashMap<>();

    ReadingOrder(PDDocument pdf) {
        this.pdf = pdf;
    }

    /** Takes over what the renderer has just written. */
    COSDictionary take() {
        COSDictionary catalog = pdf.getDocumentCatalog().getCOSObject();
        COSBase kids = catalog.getCOSDictionary(COSName.STRUCT_TREE_ROOT).getDictionaryObject(COSName.K);
        COSDictionary part = (COSDictionary) (kids instanceof COSArray array ? array.getObject(0) : kids);
        parts.add(part);
        walk(part, null);
        // What is left there, the next part would leave as it is.
        catalog.removeItem(COSName.STRUCT_TREE_ROOT);
        return part;
    }

    /** Of pages that were taken away again. */
    void drop(COSDictionary part) {
        parts.remove(part);
    }

    /** Read before all others. */
    void putFirst(COSDictionary part) {
        parts.remove(part);
        parts.add(0, part);
    }

    /** Writes one tree of all parts; pages stand in their last order. */
    void finish() {
        PDStructureTreeRoot root = new PDStructureTreeRoot();
        COSDictionary document = new COSDictionary();
        document.setItem(COSName.S, COSName.DOCUMENT);
        document.setItem(COSName.P, root.getCOSObject());
        COSArray kids = new COSArray();
        for (COSDictionary part : parts) {
            part.setItem(COSName.S, SECTION);
            part.setItem(COSName.P, document);
            kids.add(part);
        }
        document.setItem(COSName.K, kids);
        root.getCOSObject().setItem(COSName.K, document);
        lead(root);
        pdf.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo marks = new PDMarkInfo();
        marks.setMarked(true);
        pdf.getDocumentCatalog().setMarkInfo(marks);
    }

    /** From each page, and from each link, back into the tree. */
    private void lead(PDStructureTreeRoot root) {
        COSArray numbers = new COSArray();
        int next = pdf.getNumberOfPages();
        COSArray notes = new COSArray();
        for (int i = 0; i < pdf.getNumberOfPages(); i++) {
            COSDictionary page = pdf.getPage(i).getCOSObject();
            page.setItem(TABS, COSName.S);
            page.setInt(COSName.STRUCT_PARENTS, i);
            numbers.add(COSInteger.get(i));
            numbers.add(ofPages.getOrDefault(page, new COSArray()));
            COSArray onPage = page.getCOSArray(COSName.ANNOTS);
            for (int k = 0; onPage != null && k < onPage.size(); k++) {
                COSDictionary note = (COSDictionary) onPage.getObject(k);
                if (ofNotes.containsKey(note)) {
                    note.setInt(COSName.STRUCT_PARENT, next);
                    notes.add(COSInteger.get(next));
                    notes.add(ofNotes.get(note));
                    next++;
                }
            }
        }
        numbers.addAll(notes);
        COSDictionary tree = new COSDictionary();
        tree.setItem(COSName.NUMS, numbers);
        root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
        root.setParentTreeNextKey(next);
    }

    /** @param page on which an element stands unless it says otherwise */
    private void walk(COSDictionary element, COSDictionary page) {
        // Thousands of cells are of the same kind; what may be left out is.
        element.removeItem(COSName.TYPE);
        COSDictionary same = element.getCOSDictionary(COSName.A);
        if (same != null && !same.containsKey(COSName.BBOX)) {
            element.setItem(COSName.A, kinds.computeIfAbsent(values(same), any -> same));
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
