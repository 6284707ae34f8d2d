package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What is written group by group is read back as one file, by a reader that did not write it. */
class PdfObjectsTest {
    private static final COSName WHICH = COSName.getPDFName("Which");
    private static final COSName SHARED = COSName.getPDFName("Shared");
    private static final byte[] ID = "0123456789abcdef".getBytes(StandardCharsets.US_ASCII);

    private final PdfObjects objects = new PdfObjects();
    private final COSDictionary root = new COSDictionary();
    private final COSArray all = new COSArray();
    private PDDocument pdf;

    private COSDictionary written() throws IOException {
        COSDictionary pages = new COSDictionary();
        pages.setItem(COSName.TYPE, COSName.PAGES);
        pages.setItem(COSName.KIDS, new COSArray());
        pages.setInt(COSName.COUNT, 0);
        root.setItem(COSName.TYPE, COSName.CATALOG);
        root.setItem(COSName.PAGES, pages);
        root.setItem(WHICH, all);
        COSObject end = objects.write(root);
        byte[] bytes = objects.finished(end, objects.write(new COSDictionary()), ID);
        pdf = Loader.loadPDF(bytes);
        return pdf.getDocumentCatalog().getCOSObject();
    }

    /** It is taken apart only as it is asked for. */
    @AfterEach
    void close() throws IOException {
        if (pdf != null) {
            pdf.close();
        }
    }

    private static COSDictionary numbered(int number) {
        COSDictionary some = new COSDictionary();
        some.setInt(WHICH, number);
        return some;
    }

    @Test
    void moreObjectsThanOnePackHoldsAreAllThere() throws IOException {
        for (int i = 0; i < 1000; i++) {
            all.add(objects.write(numbered(i)));
            objects.forget();
        }

        COSArray read = written().getCOSArray(WHICH);

        assertThat(read.size()).isEqualTo(1000);
        for (int i = 0; i < 1000; i++) {
            assertThat(((COSDictionary) read.getObject(i)).getInt(WHICH)).isEqualTo(i);
        }
    }

    @Nested
    class WhatIsKept {
        @Test
        void isOneObjectForAllGroupsAndSaysWhatItSaysInTheEnd() throws IOException {
            COSDictionary shared = numbered(1);
            objects.keep(shared);
            for (int i = 0; i < 2; i++) {
                COSDictionary some = new COSDictionary();
                some.setItem(SHARED, shared);
                all.add(objects.write(some));
                objects.forget();
            }
            shared.setInt(WHICH, 7);
            objects.writeKept(shared);

            COSArray read = written().getCOSArray(WHICH);

            COSDictionary first = ((COSDictionary) read.getObject(0)).getCOSDictionary(SHARED);
            assertThat(first.getInt(WHICH)).isEqualTo(7);
            assertThat(((COSDictionary) read.getObject(1)).getCOSDictionary(SHARED))
                    .isSameAs(first);
        }

        @Test
        void tellsWhetherAnythingAsksForIt() throws IOException {
            COSDictionary asked = numbered(1);
            COSDictionary other = numbered(2);
            objects.keep(asked);
            objects.keep(other);

            all.add(asked);
            objects.write(all);

            assertThat(objects.isAsked(asked)).isTrue();
            assertThat(objects.isAsked(other)).isFalse();
        }
    }

    @Test
    void objectsThatReferToEachOtherAreWrittenOnce() throws IOException {
        COSDictionary parent = numbered(1);
        COSDictionary child = numbered(2);
        parent.setItem(COSName.K, child);
        child.setItem(COSName.P, parent);

        all.add(objects.write(parent));

        COSDictionary read = (COSDictionary) written().getCOSArray(WHICH).getObject(0);
        assertThat(read.getCOSDictionary(COSName.K).getCOSDictionary(COSName.P)).isSameAs(read);
    }

    @Test
    void textsNumbersAndStreamsAreReadAsTheyWereGiven() throws IOException {
        COSStream stream = new COSStream();
        try (var out = stream.createOutputStream(COSName.FLATE_DECODE)) {
            out.write("q endstream Q".repeat(50).getBytes(StandardCharsets.US_ASCII));
        }
        stream.setString(WHICH, "Bühne (links) \\ שלום");
        COSDictionary some = new COSDictionary();
        some.setItem(SHARED, COSInteger.get(-5));
        some.setItem(COSName.NAME, new COSString("( unbalanced"));
        COSObject reference = objects.write(stream);
        all.add(reference);
        all.add(objects.write(some));

        root.setItem(SHARED, reference);

        COSDictionary read = written();

        COSStream content = read.getCOSStream(SHARED);
        assertThat(content.toTextString()).isEqualTo("q endstream Q".repeat(50));
        assertThat(content.getString(WHICH)).isEqualTo("Bühne (links) \\ שלום");
        COSDictionary other = (COSDictionary) read.getCOSArray(WHICH).getObject(1);
        assertThat(other.getInt(SHARED)).isEqualTo(-5);
        assertThat(other.getString(COSName.NAME)).isEqualTo("( unbalanced");
    }
}
