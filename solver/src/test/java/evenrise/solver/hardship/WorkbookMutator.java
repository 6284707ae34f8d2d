package evenrise.solver.hardship;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** Makes neighbours of a workbook: parts missing or renamed, tags and attributes changed, cells at impossible places. */
final class WorkbookMutator {
    private static final Pattern TAG = Pattern.compile("<[^>]{1,400}>");
    private static final Pattern ATTRIBUTE = Pattern.compile("[\\w:]{1,30}=\"[^\"]{0,200}\"");
    private static final List<String> VALUES = List.of(
            "",
            "0",
            "-1",
            "1",
            "999999999",
            "2147483648",
            "ZZZZZZ14",
            "A0",
            "A1048577",
            "XFD1",
            "1A",
            "rId999",
            "s",
            "inlineStr",
            "str",
            "e",
            "b",
            "n",
            "d",
            "zzz",
            "../../x.xml",
            "/xl/workbook.xml",
            "http://localhost/x",
            "é",
            "A1:ZZZZZZ9");

    private WorkbookMutator() {}

    static byte[] mutated(byte[] seed, Random chance) {
        if (chance.nextInt(5) == 0) {
            return ByteMutator.mutated(seed, chance);
        }
        Map<String, byte[]> parts = parts(seed);
        int times = 1 + chance.nextInt(3);
        for (int i = 0; i < times && !parts.isEmpty(); i++) {
            List<String> names = new ArrayList<>(parts.keySet());
            String name = names.get(chance.nextInt(names.size()));
            String sheet = "xl/worksheets/sheet1.xml";
            mutate(parts, parts.containsKey(sheet) && chance.nextBoolean() ? sheet : name, chance);
        }
        return packed(parts);
    }

    private static void mutate(Map<String, byte[]> parts, String name, Random chance) {
        switch (chance.nextInt(8)) {
            case 0 -> parts.remove(name);
            case 1 -> parts.put(name + "x", parts.remove(name));
            case 2 -> parts.put(name, ByteMutator.mutated(parts.get(name), chance));
            default -> parts.put(name, xml(parts.get(name), chance));
        }
    }

    private static byte[] xml(byte[] part, Random chance) {
        String text = new String(part, StandardCharsets.UTF_8);
        List<MatchResult> tags = TAG.matcher(text).results().toList();
        List<MatchResult> attributes = ATTRIBUTE.matcher(text).results().toList();
        if (tags.isEmpty() || attributes.isEmpty()) {
            return part;
        }
        MatchResult tag = tags.get(chance.nextInt(tags.size()));
        MatchResult attribute = attributes.get(chance.nextInt(attributes.size()));
        String value = VALUES.get(chance.nextInt(VALUES.size()));
        String named = attribute.group().substring(0, attribute.group().indexOf('=') + 1);
        String changed =
                switch (chance.nextInt(8)) {
                    case 0 -> replaced(text, tag, "");
                    case 1 -> replaced(text, tag, tag.group().repeat(1 + chance.nextInt(3)));
                    case 2 ->
                        replaced(
                                text, tag, tags.get(chance.nextInt(tags.size())).group());
                    case 3 -> replaced(text, attribute, "");
                    case 4, 5 -> replaced(text, attribute, named + '"' + value + '"');
                    case 6 ->
                        text.replaceAll(
                                Pattern.quote(named) + "\"[^\"]*\"",
                                named.replace("$", "") + '"' + value.replace("$", "") + '"');
                    default ->
                        text.replaceFirst(
                                ">[^<]{1,40}<",
                                ">"
                                        + List.of("1e400", "-5", "&#1;", "&x;", "9".repeat(400), "<v>1</v>")
                                                .get(chance.nextInt(6))
                                        + "<");
                };
        return changed.getBytes(StandardCharsets.UTF_8);
    }

    private static String replaced(String text, MatchResult at, String by) {
        return text.substring(0, at.start()) + by + text.substring(at.end());
    }

    private static Map<String, byte[]> parts(byte[] workbook) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try {
            Path file = Files.write(Files.createTempFile("workbook", ".xlsx"), workbook);
            try (ZipFile zip = new ZipFile(file.toFile())) { // A stream cannot tell how long an entry is.
                for (ZipEntry entry : zip.stream().toList()) {
                    parts.put(entry.getName(), zip.getInputStream(entry).readAllBytes());
                }
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return parts;
    }

    private static byte[] packed(Map<String, byte[]> parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> each : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(each.getKey()));
                zip.write(each.getValue());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
