package evenrise.solver.rendering;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * A tagged PDF that is written part by part. What is laid out is in the file, and out of the memory, before the next part is
 * begun; only what concerns the whole is kept: fonts, the pages' heads, the outline, the tree's root.
 */
final class TaggedFile implements Closeable {
    private static final COSName TABS = COSName.getPDFName("Tabs");

    /** What is drawn over a page that is laid out. */
    interface Beside {
        void draw(PDPage page, PDPageContentStream stream) throws IOException;
    }

    /** Pages that are laid out and not in the file yet. */
    final class Laid implements Closeable {
        private final PDDocument pdf;

        private final int pages;

        private Laid(PDDocument pdf) {
            this.pdf = pdf;
            this.pages = pdf.getNumberOfPages();
        }

        int pages() {
            return pages;
        }

        @Override
        public void close() throws IOException {
            pdf.close();
        }
    }

    /** @param text name of the font of what is drawn over it */
    private record Written(PDPage page, COSObject content, COSName text) {}

    private final PDDocument whole = new PDDocument();
    private final PrintFonts fonts;
    private final TaggedPages tagged = new TaggedPages();
    private final PdfObjects objects = new PdfObjects();
    private final ReadingOrder order;
    private final COSObject before;
    private final COSObject after;
    private final List<Written> written = new ArrayList<>();
    private final COSDictionary tree;

    /** @param signs that are to be printed */
    TaggedFile(SortedSet<Integer> signs) throws IOException {
        fonts = PrintFonts.in(whole, signs);
        fonts.all().forEach(font -> objects.keep(font.getCOSObject()));
        objects.keep(tagged.marks());
        tree = whole.getPages().getCOSObject();
        objects.keep(tree);
        order = new ReadingOrder(objects);
        before = operator("q\n");
        after = operator("Q\n");
    }

    private COSObject operator(String text) throws IOException {
        COSStream stream = new COSStream();
        try (var out = stream.createOutputStream()) {
            out.write(text.getBytes(StandardCharsets.ISO_8859_1));
        }
        COSObject reference = objects.write(stream);
        objects.forget();
        return reference;
    }

    PrintFonts fonts() {
        return fonts;
    }

    int pages() {
        return written.size();
    }

    /** From 0. */
    PDPage page(int index) {
        return written.get(index).page();
    }

    /** @param paper width and height, as a style sheet writes them */
    Laid laid(Markup markup, String paper) throws IOException {
        PDDocument pdf = new PDDocument();
        markup.print(paper, fonts, tagged, pdf);
        return new Laid(pdf);
    }

    /** Behind all others. */
    void add(Laid laid) throws IOException {
        put(laid, written.size(), false);
    }

    /** Before all others. */
    void addFirst(Laid laid) throws IOException {
        put(laid, 0, true);
    }

    private void put(Laid laid, int at, boolean isFirst) throws IOException {
        try (laid) {
            List<PDPage> pages = new ArrayList<>();
            laid.pdf.getPages().forEach(pages::add);
            pages.forEach(page -> objects.keep(page.getCOSObject()));
            order.take(laid.pdf, pages, isFirst);
            int next = at;
            for (PDPage page : pages) {
                written.add(next++, written(page));
            }
            objects.forget();
        }
    }

    private Written written(PDPage page) throws IOException {
        COSDictionary head = page.getCOSObject();
        COSName text = page.getResources().add(fonts.text());
        COSObject content = objects.write(head.getDictionaryObject(COSName.CONTENTS));
        head.removeItem(COSName.CONTENTS);
        head.setItem(COSName.RESOURCES, objects.write(page.getResources().getCOSObject()));
        COSArray notes = head.getCOSArray(COSName.ANNOTS);
        if (notes != null) {
            COSArray references = new COSArray();
            for (COSBase note : notes) {
                references.add(objects.write(note));
            }
            head.setItem(COSName.ANNOTS, references);
        }
        head.setItem(COSName.PARENT, tree);
        head.setItem(TABS, COSName.S);
        return new Written(page, content, text);
    }

    /** Over a page that is laid out, not read aloud: it is the same on every page. */
    void draw(int index, Beside beside) throws IOException {
        Written to = written.get(index);
        try (PDDocument scratch = new PDDocument()) {
            PDPage page = new PDPage(to.page().getMediaBox());
            PDResources resources = new PDResources();
            resources.put(to.text(), fonts.text());
            page.setResources(resources);
            scratch.addPage(page);
            try (PDPageContentStream stream =
                    new PDPageContentStream(scratch, page, AppendMode.OVERWRITE, true, false)) {
                stream.beginMarkedContent(COSName.ARTIFACT);
                beside.draw(page, stream);
                stream.endMarkedContent();
            }
            COSArray contents = new COSArray();
            contents.add(before);
            contents.add(to.content());
            contents.add(after);
            contents.add(objects.write(page.getCOSObject().getDictionaryObject(COSName.CONTENTS)));
            to.page().getCOSObject().setItem(COSName.CONTENTS, contents);
            objects.forget();
        }
    }

    /** Its catalog and what it says of itself; it has no pages. */
    PDDocument whole() {
        return whole;
    }

    byte[] finished() throws IOException {
        order.finish(whole);
        COSArray kids = new COSArray();
        for (Written each : written) {
            COSDictionary head = each.page().getCOSObject();
            if (!head.containsKey(COSName.CONTENTS)) {
                head.setItem(COSName.CONTENTS, each.content());
            }
            objects.writeKept(head);
            kids.add(head);
        }
        tree.setItem(COSName.KIDS, kids);
        tree.setItem(COSName.COUNT, COSInteger.get(written.size()));
        objects.writeKept(tree);
        for (PDFont font : fonts.all()) {
            if (objects.isAsked(font.getCOSObject())) {
                font.subset();
                objects.writeKept(font.getCOSObject());
            }
        }
        objects.writeKept(tagged.marks());
        COSObject root = objects.write(whole.getDocumentCatalog().getCOSObject());
        COSObject information = objects.write(whole.getDocumentInformation().getCOSObject());
        return objects.finished(root, information, id());
    }

    /** From what the file says of itself, not from the clock: equal sheets are equal files. */
    private byte[] id() {
        try {
            return MessageDigest.getInstance("MD5")
                    .digest((whole.getDocumentId() + " " + written.size()).getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Java has it", e);
        }
    }

    @Override
    public void close() {
        try {
            whole.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
