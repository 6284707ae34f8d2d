package evenrise.model.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import evenrise.model.contract.Harmless;
import java.io.IOException;
import java.util.ArrayList;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/**
 * Parses JSON or YAML into a tree that knows its places. YAML aliases are refused rather than expanded, so that no small
 * file becomes a large tree.
 */
final class TreeReader {
    /** Deepest nesting; the formats need six levels. */
    static final int DEEPEST = 64;

    /** Most values in one file, some twenty times a plant of 5,000 loads: bounds the memory that a hostile file takes. */
    static final int MOST_VALUES = 2_000_000;

    /** Longest line of YAML: its scanner's time grows with the square of it. */
    static final int LONGEST_YAML_LINE = 100_000;

    private static final int LONGEST_REASON = 200;
    private static final StreamReadConstraints CONSTRAINTS = StreamReadConstraints.builder()
            .maxNestingDepth(2 * DEEPEST)
            .maxNumberLength(400)
            .maxStringLength(1_000_000)
            .maxNameLength(10_000)
            .build();
    private static final JsonFactory JSON = JsonFactory.builder()
            .streamReadConstraints(CONSTRAINTS)
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();
    private static final JsonFactory YAML = YAMLFactory.builder()
            .streamReadConstraints(CONSTRAINTS)
            .loaderOptions(yamlOptions())
            .build();

    private final JsonParser parser;
    private final Problems problems;
    private final String subject;
    private int values;

    private TreeReader(JsonParser parser, Problems problems, String subject) {
        this.parser = parser;
        this.problems = problems;
        this.subject = subject;
    }

    /** Keys given twice become problems. */
    static Node read(String text, Format format, String name, Problems problems) throws Unreadable {
        String subject = Input.subject(name);
        if (format == Format.YAML) {
            refuseLongLines(text, subject);
        }
        try (JsonParser parser = (format == Format.YAML ? YAML : JSON).createParser(text)) {
            TreeReader reader = new TreeReader(parser, problems, subject);
            try {
                return reader.document(format);
            } catch (IOException | RuntimeException e) {
                // What the parsers throw for some broken input is not declared; nothing of ours throws in there.
                throw reader.broken(e, format);
            }
        } catch (IOException e) {
            throw new Unreadable(0, 0, subject, "broken " + format, "well-formed " + format, "");
        }
    }

    private static void refuseLongLines(String text, String subject) throws Unreadable {
        int line = 1;
        int begin = 0;
        for (int at = 0; at <= text.length(); at++) {
            if (at - begin > LONGEST_YAML_LINE) {
                String most = "lines of at most " + LONGEST_YAML_LINE + " characters";
                throw new Unreadable(line, 1, subject, "YAML with a longer line", most, "Maybe break it, or use JSON.");
            }
            if (at < text.length() && text.charAt(at) == '\n') {
                line++;
                begin = at + 1;
            }
        }
    }

    private Node document(Format format) throws IOException, Unreadable {
        if (parser.nextToken() == null) {
            throw new Unreadable(0, 0, subject, "empty but for comments", "one object", "");
        }
        Node root = value(0);
        if (parser.nextToken() != null) {
            throw refused("two documents in one file", "a single " + format + " object", "Maybe split the file.");
        }
        return root;
    }

    private Node value(int depth) throws IOException, Unreadable {
        if (++values > MOST_VALUES) {
            throw refused("over " + MOST_VALUES + " values long", "at most that many", "Maybe it is another file.");
        }
        if (depth > DEEPEST) {
            throw refused("nested deeper than " + DEEPEST, "at most six levels", "Maybe a bracket is missing.");
        }
        if (parser instanceof YAMLParser yaml && yaml.isCurrentAlias()) {
            throw refused("using a YAML alias", "every value written out", "Maybe copy what the anchor marks.");
        }
        JsonLocation at = parser.currentTokenLocation();
        int line = at.getLineNr();
        int column = at.getColumnNr();
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> object(depth, line, column);
            case START_ARRAY -> array(depth, line, column);
            case VALUE_TRUE, VALUE_FALSE -> new Node.Bool(line, column, token == JsonToken.VALUE_TRUE);
            case VALUE_NULL -> new Node.Null(line, column);
            case VALUE_NUMBER_INT -> new Node.Num(line, column, parser.getNumberValue(), parser.getText());
            case VALUE_NUMBER_FLOAT -> new Node.Num(line, column, parser.getDoubleValue(), parser.getText());
            default -> new Node.Text(line, column, parser.getText());
        };
    }

    private Node object(int depth, int line, int column) throws IOException, Unreadable {
        Node.Obj object = new Node.Obj(line, column);
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            JsonLocation at = parser.currentTokenLocation();
            parser.nextToken();
            Node.Member member = new Node.Member(at.getLineNr(), at.getColumnNr(), value(depth + 1));
            Node.Member first = object.members().putIfAbsent(key, member);
            if (first != null) {
                problems.error(
                        parser.getParsingContext().pathAsPointer().toString(),
                        member.line(),
                        member.column(),
                        "given twice",
                        "it once (first in line " + first.line() + ")",
                        "Maybe delete one of the two.");
            }
        }
        return object;
    }

    private Node array(int depth, int line, int column) throws IOException, Unreadable {
        Node.Arr array = new Node.Arr(line, column, new ArrayList<>());
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            array.entries().add(value(depth + 1));
        }
        return array;
    }

    private Unreadable refused(String value, String expected, String cure) {
        JsonLocation at = parser.currentTokenLocation();
        return new Unreadable(at.getLineNr(), at.getColumnNr(), subject, value, expected, cure);
    }

    private Unreadable broken(Exception e, Format format) {
        String why = e.getMessage() == null ? "it ends or turns where it must not" : e.getMessage();
        JsonLocation at = parser.currentLocation();
        if (e instanceof JsonProcessingException json) {
            why = json.getOriginalMessage();
            at = json.getLocation() == null ? at : json.getLocation();
        }
        int line = at == null ? 0 : at.getLineNr();
        int column = at == null ? 0 : at.getColumnNr();
        if (e.getCause() instanceof MarkedYAMLException yaml && yaml.getProblemMark() != null) {
            why = yaml.getProblem();
            line = yaml.getProblemMark().getLine() + 1;
            column = yaml.getProblemMark().getColumn() + 1;
        }
        boolean cutShort = e instanceof JsonEOFException;
        return new Unreadable(
                Math.max(0, line),
                Math.max(0, column),
                subject,
                (cutShort ? "cut short" : "broken " + format) + " (" + reason(why) + ")",
                "well-formed " + format,
                cutShort ? "Maybe an earlier write was cut short, or a bracket or quote is not closed." : "");
    }

    /** What the parser says, without the names of its classes, which would help nobody. */
    private static String reason(String message) {
        String line = message.lines()
                .findFirst()
                .orElse("")
                .replaceAll("\\s*+\\(start marker at .*", "")
                .replaceAll(", got this instead: <.*", "")
                .replaceAll("[(<]?\\b(?:com|org|java|io)\\.[\\w.$]+.*", "");
        return Harmless.named(line.length() > LONGEST_REASON ? line.substring(0, LONGEST_REASON) + "…" : line);
    }

    private static LoaderOptions yamlOptions() {
        LoaderOptions options = new LoaderOptions();
        options.setCodePointLimit(Input.MOST_BYTES);
        options.setNestingDepthLimit(DEEPEST);
        options.setMaxAliasesForCollections(0);
        return options;
    }
}
