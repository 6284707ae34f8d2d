package evenrise.model.file;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.contract.Field;
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
import java.util.Optional;
import java.util.regex.Pattern;

/** What a run has written into a folder: names and hashes. What cannot be read as one names nothing. */
record FileManifest(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "What whoever uses these files has to know")
        List<String> cautions,

        @Field(meaning = "What the last run has written into this folder")
        List<Entry> files) {
    static final String FORMAT = "evenrise-files/1";

    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Pattern PLAIN_NAME = Pattern.compile("[^/\\\\:\\x00-\\x1f]{1,255}");

    /** One file. */
    record Entry(
            @Field(meaning = "Name in the folder", atLeast = 1)
            String name,

            @Field(meaning = "SHA-256 of its bytes, hexadecimal")
            String sha256,

            @Field(meaning = "Name that it has until the run is finished", optional = true)
            Optional<String> temporary) {}

    FileManifest {
        cautions = List.copyOf(cautions);
        files = List.copyOf(files);
    }

    FileManifest(List<Entry> files) {
        this(FORMAT, Cautions.ALL, files);
    }

    static FileManifest read(Path file) throws IOException {
        List<Entry> entries = new ArrayList<>();
        if (Files.isRegularFile(file)) {
            for (JsonNode each : tree(file).path("files")) {
                Entry entry = new Entry(
                        each.path("name").asText(),
                        each.path("sha256").asText(),
                        Optional.of(each.path("temporary").asText()).filter(name -> !name.isEmpty()));
                boolean isPlain = PLAIN_NAME.matcher(entry.name()).matches()
                        && !entry.name().equals("..")
                        && !entry.name().equals(".")
                        && entry.temporary()
                                .map(name -> PLAIN_NAME.matcher(name).matches())
                                .orElse(true);
                if (isPlain) { // Names that lead out of the folder are not from here.
                    entries.add(entry);
                }
            }
        }
        return new FileManifest(entries);
    }

    void write(Path file) throws WriteFailed {
        WholeFile.write(file, FileText.of(this, Format.JSON));
    }

    FileManifest withoutTemporaries() {
        return new FileManifest(files.stream()
                .map(each -> new Entry(each.name(), each.sha256(), Optional.empty()))
                .toList());
    }

    Map<String, String> hashes() {
        Map<String, String> hashes = new LinkedHashMap<>();
        files.forEach(each -> hashes.put(each.name(), each.sha256()));
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
