package evenrise.model.file;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenrise.model.plan.Cautions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** What a run has written into a folder: names and hashes. What cannot be read as one names nothing. */
record FileManifest(List<Entry> entries) {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Pattern PLAIN_NAME = Pattern.compile("[^/\\\\:\\x00-\\x1f]{1,255}");

    /**
     * One file.
     *
     * @param name in the folder
     * @param sha256 of its bytes, hexadecimal
     * @param temporary name that it has until the run is finished; empty afterwards
     */
    record Entry(String name, String sha256, String temporary) {}

    FileManifest {
        entries = List.copyOf(entries);
    }

    static FileManifest read(Path file) throws IOException {
        List<Entry> entries = new ArrayList<>();
        if (Files.isRegularFile(file)) {
            for (JsonNode each : tree(file).path("files")) {
                Entry entry = new Entry(
                        each.path("name").asText(),
                        each.path("sha256").asText(),
                        each.path("temporary").asText());
                boolean isPlain = PLAIN_NAME.matcher(entry.name()).matches()
                        && !entry.name().equals("..")
                        && !entry.name().equals(".")
                        && (entry.temporary().isEmpty()
                                || PLAIN_NAME.matcher(entry.temporary()).matches());
                if (isPlain) { // Names that lead out of the folder are not from here.
                    entries.add(entry);
                }
            }
        }
        return new FileManifest(entries);
    }

    void write(Path file) throws WriteFailed {
        ObjectNode root = MAPPER.createObjectNode().put("format", "evenrise-files/1");
        Cautions.ALL.forEach(root.putArray("cautions")::add);
        ArrayNode files = root.putArray("files");
        for (Entry each : entries) {
            ObjectNode entry = files.addObject().put("name", each.name()).put("sha256", each.sha256());
            if (!each.temporary().isEmpty()) {
                entry.put("temporary", each.temporary());
            }
        }
        WholeFile.write(file, root.toPrettyString() + "\n");
    }

    FileManifest withoutTemporaries() {
        return new FileManifest(entries.stream()
                .map(each -> new Entry(each.name(), each.sha256(), ""))
                .toList());
    }

    Map<String, String> hashes() {
        Map<String, String> hashes = new LinkedHashMap<>();
        entries.forEach(each -> hashes.put(each.name(), each.sha256()));
        return hashes;
    }

    static String hash(Path file) throws IOException {
        return hash(Files.readAllBytes(file));
    }

    static String hash(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static JsonNode tree(Path file) throws IOException {
        try {
            return MAPPER.readTree(file.toFile());
        } catch (JacksonException e) {
            return MAPPER.createObjectNode();
        }
    }
}
