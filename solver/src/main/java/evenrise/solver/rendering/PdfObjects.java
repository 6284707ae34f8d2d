package evenrise.solver.rendering;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfwriter.COSWriter;

/**
 * Objects as the library holds them, written into a file group by group. A group is forgotten once it is written; what later
 * groups refer to as well is kept, and written last. Dictionaries that are not told to be direct are objects of their own.
 */
final class PdfObjects {
    private static final byte[] NULL = "null".getBytes(StandardCharsets.ISO_8859_1);

    private final PdfFile file = new PdfFile();
    private final Map<COSBase, Integer> kept = new IdentityHashMap<>();
    private final Set<COSBase> asked = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Map<COSBase, Integer> group = new IdentityHashMap<>();
    private final ArrayDeque<COSBase> open = new ArrayDeque<>();

    /** It is referred to by all groups, and written once they have ended. */
    COSObject keep(COSDictionary shared) {
        return reference(kept.computeIfAbsent(shared, any -> file.number()));
    }

    /** Whether anything that is written refers to what is kept. */
    boolean isAsked(COSDictionary shared) {
        return asked.contains(shared);
    }

    /** Written with all that it refers to and that is not kept; it may be referred to in later groups by what is returned. */
    COSObject write(COSBase object) throws IOException {
        int number = numberOf(object);
        flush();
        return reference(number);
    }

    /** Ends a group: nobody refers to its objects but by references that were returned. */
    void forget() {
        group.clear();
    }

    /** Something that is kept, once it says all that it is to say. */
    void writeKept(COSDictionary shared) throws IOException {
        put(kept.get(shared), shared);
        flush();
    }

    byte[] finished(COSObject root, COSObject information, byte[] id) throws IOException {
        ByteArrayOutputStream trailer = new ByteArrayOutputStream();
        text("/Root ", trailer);
        value(root, trailer);
        text("/Info ", trailer);
        value(information, trailer);
        text("/ID[", trailer);
        COSWriter.writeString(id, trailer);
        COSWriter.writeString(id, trailer);
        text("]", trailer);
        return file.finished(trailer.toString(StandardCharsets.ISO_8859_1));
    }

    private static COSObject reference(int number) {
        return new COSObject(new COSObjectKey(number, 0), null);
    }

    private int numberOf(COSBase object) {
        Integer known = kept.get(object);
        if (known != null) {
            asked.add(object);
            return known;
        }
        known = group.get(object);
        if (known == null) {
            known = file.number();
            group.put(object, known);
            open.add(object);
        }
        return known;
    }

    private void flush() throws IOException {
        while (!open.isEmpty()) {
            COSBase next = open.poll();
            put(group.get(next), next);
        }
    }

    private void put(int number, COSBase object) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        if (object instanceof COSStream stream) {
            entries(stream, body);
            try (InputStream content = stream.createRawInputStream()) {
                file.stream(number, body.toByteArray(), content);
            }
            return;
        }
        if (object instanceof COSDictionary dictionary) {
            dictionary(dictionary, body);
        } else {
            value(object, body);
        }
        file.object(number, body.toByteArray());
    }

    private void value(COSBase value, OutputStream out) throws IOException {
        if (value instanceof COSObject object) {
            if (object.getKey() != null) {
                text(object.getKey().getNumber() + " 0 R", out);
            } else {
                value(object.getObject(), out);
            }
        } else if (value instanceof COSStream) {
            text(numberOf(value) + " 0 R", out);
        } else if (value instanceof COSDictionary dictionary) {
            if (dictionary.isDirect()) {
                dictionary(dictionary, out);
            } else {
                text(numberOf(value) + " 0 R", out);
            }
        } else if (value instanceof COSArray array) {
            out.write('[');
            for (int i = 0; i < array.size(); i++) {
                if (i > 0) {
                    out.write(' ');
                }
                value(array.get(i), out);
            }
            out.write(']');
        } else if (value instanceof COSName name) {
            name.writePDF(out);
        } else if (value instanceof COSInteger number) {
            number.writePDF(out);
        } else if (value instanceof COSFloat number) {
            number.writePDF(out);
        } else if (value instanceof COSString text) {
            COSWriter.writeString(text, out);
        } else if (value instanceof COSBoolean truth) {
            truth.writePDF(out);
        } else {
            out.write(NULL);
        }
    }

    private void dictionary(COSDictionary dictionary, OutputStream out) throws IOException {
        text("<<", out);
        entries(dictionary, out);
        text(">>", out);
    }

    private void entries(COSDictionary dictionary, OutputStream out) throws IOException {
        boolean isStream = dictionary instanceof COSStream;
        for (Map.Entry<COSName, COSBase> each : dictionary.entrySet()) {
            if (!(isStream && COSName.LENGTH.equals(each.getKey()))) {
                each.getKey().writePDF(out);
                out.write(' ');
                value(each.getValue(), out);
            }
        }
    }

    private static void text(String text, OutputStream out) throws IOException {
        out.write(text.getBytes(StandardCharsets.ISO_8859_1));
    }
}
