package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.app.FileSchema;
import evenrise.solver.recording.DrawnStart;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every file of ours that a command writes for other programs keeps its published schema, and that schema means something. */
class WrittenFilesTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final YAMLMapper YAML = new YAMLMapper();
    private static final String YARD = "../datasets/lantern-yard/";
    private static final String CASES = "../model/src/test/resources/cases/";

    /** What the program reads and never writes. */
    private static final Set<FileSchema> READ_ALONE = Set.of(
            FileSchema.SCRIPT,
            FileSchema.TITLE,
            FileSchema.PORTFOLIO,
            FileSchema.MEASURED,
            FileSchema.MOVES,
            FileSchema.READINGS);

    /** Only boards of one kind of timing need them, or a default gives them; the reader judges that, a schema does not. */
    private static final Set<String> BY_TIMING_OR_DEFAULT =
            Set.of(".board_types[].start_delay_s", ".board_types[].step_s", ".loads[].breaker_a");

    private static final Map<FileSchema, List<JsonNode>> WRITTEN = new EnumMap<>(FileSchema.class);

    @TempDir
    private static Path folder;

    @BeforeAll
    static void everyCommandWrites() throws IOException {
        String hall = Files.writeString(folder.resolve("hall.json"), SmallHall.PROJECT)
                .toString();
        Shell sound = new Shell(SmallHall.sound());
        Shell broken = new Shell(SmallHall.broken());
        sound.run("plan", hall, "-o", at("hall.plan.json"));
        sound.run("plan", hall, "-o", at("hall.plan.yaml"), "--report", at("documents"));
        broken.run("plan", hall, "-o", at("broken.plan.json"));
        for (String plan : List.of("hall.plan.json", "broken.plan.json")) {
            keep(JSON.readTree(sound.run("audit", hall, at(plan), "--json").out()));
        }
        for (String load : List.of("amp", "dsp")) {
            keep(JSON.readTree(sound.run("explain", hall, at("hall.plan.json"), load, "--all", "--json")
                    .out()));
        }
        sound.run("audit", hall, at("hall.plan.json"), "--typical-inrush-into", at("typical.yaml"));
        sound.run("rehearse", hall, at("hall.plan.json"), "--trace", at("trace.json"));
        sound.run("rehearse", hall, at("hall.plan.json"), "--trials", "20", "--trace", at("trials.json"));
        sound.run("import", "../datasets/juniper-hall/list.csv", "-o", at("imported.json"));
        sound.run("import", "../datasets/juniper-hall/list.csv", "--write-mapping", at("mapping.yaml"));
        sound.run("generate", "--panels", "1", "-o", at("generated.yaml"));
        for (String plant : List.of("quay-works", "tin-shed")) {
            String project = "../datasets/" + plant + "/project.json";
            keep(JSON.readTree(sound.run("size", project, "--json").out()));
        }
        // What a plain house leaves empty: nodes behind transformers, systems, scenes, room to be left.
        for (String plant : List.of("broken-whole-plant-one-at-a-time", "broken-spare", "kept-four-transformers")) {
            String project = CASES + plant + "/project.json";
            keep(JSON.readTree(sound.run("audit", project, CASES + plant + "/plan.json", "--json")
                    .out()));
        }
        Project yard = ProjectFile.read(Path.of(YARD + "project.json")).value().orElseThrow();
        Plan built =
                PlanFile.read(Path.of(YARD + "built.plan.json"), yard).value().orElseThrow();
        Shell nearby = new Shell(built);
        keep(JSON.readTree(nearby.run("audit", YARD + "project.json", YARD + "built.plan.json", "--json")
                .out()));
        Files.copy(Path.of(YARD + "project.json"), folder.resolve("yard.project.json"));
        Files.write(folder.resolve("log.csv"), DrawnStart.of(DrawnStart.yard(), "Zeit,1. Kanal,2. Kanal,3. Kanal", ""));
        nearby.run(
                "observe",
                at("yard.project.json"),
                YARD + "built.plan.json",
                at("log.csv"),
                "--column",
                "time=Zeit",
                "--column",
                "A=1. Kanal");
        nearby.run(
                "rehearse", YARD + "project.json", YARD + "built.plan.json", "emergency@1", "--trace", at("yard.json"));
        nearby.run(
                "rework",
                YARD + "project.json",
                YARD + "built.plan.json",
                "--measured",
                YARD + "measured.csv",
                "--moves",
                "2000",
                "--threads",
                "1",
                "-o",
                at("rework"));
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted().toList()) {
                if (file.toString().endsWith(".json")) {
                    keep(JSON.readTree(file.toFile()));
                } else if (file.toString().endsWith(".yaml")) {
                    keep(YAML.readTree(file.toFile()));
                }
            }
        }
    }

    private static String at(String name) {
        return folder.resolve(name).toString();
    }

    /** A file says what it is. */
    private static void keep(JsonNode file) {
        String format = file.path("format").asText();
        assertThat(format).matches("evenrise-[a-z]+/1");
        FileSchema schema =
                FileSchema.valueOf(format.replaceAll("evenrise-|/1", "").toUpperCase(Locale.ROOT));
        WRITTEN.computeIfAbsent(schema, any -> new ArrayList<>()).add(file);
    }

    private static JsonSchema published(FileSchema schema) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(schema.text());
    }

    @Test
    void areOfEveryPublishedFormat() {
        assertThat(WRITTEN.keySet())
                .containsExactlyInAnyOrderElementsOf(Stream.of(FileSchema.values())
                        .filter(schema -> !READ_ALONE.contains(schema))
                        .toList());
    }

    @ParameterizedTest
    @EnumSource(FileSchema.class)
    void keepTheirSchema(FileSchema kind) {
        for (JsonNode file : WRITTEN.getOrDefault(kind, List.of())) {
            assertThat(published(kind).validate(file)).isEmpty();
        }
    }

    /** In each kind of object of each file each field once: left out, and with a value of another type. */
    @ParameterizedTest
    @EnumSource(
            value = FileSchema.class,
            names = {"SCRIPT", "TITLE", "MAPPING", "RECORDERS", "PORTFOLIO", "MEASURED", "MOVES", "READINGS"},
            mode = EnumSource.Mode.EXCLUDE)
    void noLongerKeepItWithAFieldLessOrOfAnotherType(FileSchema kind) {
        JsonSchema schema = published(kind);
        Set<String> seen = new HashSet<>();
        List<String> accepted = new ArrayList<>();
        for (JsonNode file : WRITTEN.get(kind)) {
            spoil(kind, schema, file, file, "", seen, accepted);
        }

        assertThat(seen).hasSizeGreaterThan(kind == FileSchema.FILES ? 4 : 10);
        assertThat(accepted).isEmpty();
    }

    private static void spoil(
            FileSchema kind,
            JsonSchema schema,
            JsonNode file,
            JsonNode at,
            String place,
            Set<String> seen,
            List<String> accepted) {
        if (at.isArray()) {
            at.forEach(entry -> spoil(kind, schema, file, entry, place + "[]", seen, accepted));
        } else if (at instanceof ObjectNode object) {
            List<String> keys = new ArrayList<>();
            object.fieldNames().forEachRemaining(keys::add);
            for (String key : keys) {
                JsonNode value = object.get(key);
                String inner = place + "." + key;
                spoil(kind, schema, file, value, inner, seen, accepted);
                if (!seen.add(inner + " " + value.getNodeType())) {
                    continue;
                }
                for (JsonNode other : others(value)) {
                    object.set(key, other);
                    if (schema.validate(file).isEmpty()) {
                        accepted.add(inner + " as " + other);
                    }
                }
                object.remove(key);
                boolean isPhaseOfANode = key.matches("[ABC]");
                if (schema.validate(file).isEmpty()
                        && !isPhaseOfANode
                        && !BY_TIMING_OR_DEFAULT.contains(inner)
                        && !mayBeAbsent(kind, file)) {
                    accepted.add(inner + " left out");
                }
                object.set(key, value);
            }
        }
    }

    private static List<JsonNode> others(JsonNode value) {
        JsonNodeFactory nodes = JsonNodeFactory.instance;
        return switch (value.getNodeType()) {
            case NUMBER -> List.of(nodes.textNode(value.asText()), nodes.objectNode());
            case STRING -> List.of(nodes.numberNode(7), nodes.objectNode());
            case BOOLEAN -> List.of(nodes.textNode(value.asText()), nodes.numberNode(1));
            case OBJECT -> List.of(nodes.arrayNode(), nodes.textNode("{}"));
            case ARRAY -> List.of(nodes.objectNode(), nodes.numberNode(1));
            default -> List.of(nodes.objectNode());
        };
    }

    /** Of a project and a plan the reader says what must be there; every other file has all of its fields. */
    private static boolean mayBeAbsent(FileSchema kind, JsonNode file) {
        byte[] text = file.toString().getBytes(StandardCharsets.UTF_8);
        return switch (kind) {
            case PROJECT ->
                ProjectFile.read(text, "project.json").problems().stream()
                        .noneMatch(problem -> problem.value().equals("missing"));
            case PLAN ->
                PlanFile.read(text, "plan.json").problems().stream()
                        .noneMatch(problem -> problem.value().equals("missing"));
            default -> false;
        };
    }
}
