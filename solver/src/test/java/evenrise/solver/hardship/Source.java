package evenrise.solver.hardship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.file.Format;
import evenrise.model.file.MappingFile;
import evenrise.model.file.PlanFile;
import evenrise.model.file.PortfolioFile;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.ScriptFile;
import evenrise.model.file.SideNotes;
import evenrise.model.file.TitleBlockFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.intake.Mapping;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.intake.EquipmentList;
import evenrise.solver.intake.Template;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.MeasuredCsv;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;

/** A kind of file that we read: valid ones, their neighbours, and what reading one says. */
enum Source {
    PROJECT("project") {
        @Override
        List<byte[]> seeds() {
            return datasets(
                    "quay-works/project.json",
                    "tin-shed/project.json",
                    "copper-mill/project.json",
                    "willow-chapel/project.json",
                    "lantern-yard/project.json",
                    "juniper-hall/project.json");
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) {
            Reading<Project> reading = ProjectFile.read(bytes, name);
            reading.value().ifPresent(project -> {
                readsBack(project, reading.notes(), bytes.length % 2 == 0 ? Format.JSON : Format.YAML);
            });
            return messages(reading);
        }
    },
    PLAN("plan") {
        @Override
        List<byte[]> seeds() {
            return datasets("lantern-yard/built.plan.json");
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) {
            return messages(PlanFile.read(new ByteArrayInputStream(bytes), name, YARD));
        }
    },
    SCRIPT("script") {
        @Override
        List<byte[]> seeds() {
            return datasets("willow-chapel/scripts/stormy-service.json");
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) {
            return messages(ScriptFile.read(new ByteArrayInputStream(bytes), name, CHAPEL));
        }
    },
    MAPPING("") {
        @Override
        List<byte[]> seeds() {
            return List.of(MAPPING_TEXT.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        byte[] neighbour(byte[] seed, Random chance) {
            return ByteMutator.mutated(seed, chance);
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) throws IOException {
            return messages(MappingFile.read(Files.write(folder.resolve("m.yaml"), bytes)));
        }
    },
    PORTFOLIO("") {
        @Override
        List<byte[]> seeds() {
            return List.of(PORTFOLIO_TEXT.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        byte[] neighbour(byte[] seed, Random chance) {
            return ByteMutator.mutated(seed, chance);
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) throws IOException {
            return messages(PortfolioFile.read(Files.write(folder.resolve("p.json"), bytes)));
        }
    },
    LIST("") {
        @Override
        List<byte[]> seeds() {
            List<byte[]> seeds = new ArrayList<>(datasets("juniper-hall/list.csv"));
            seeds.add(Template.csv());
            return seeds;
        }

        @Override
        byte[] neighbour(byte[] seed, Random chance) {
            return chance.nextInt(5) == 0 ? ByteMutator.mutated(seed, chance) : TableMutator.mutated(seed, chance);
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) throws IOException {
            return list(Files.write(folder.resolve("l.csv"), bytes));
        }
    },
    WORKBOOK("") {
        @Override
        List<byte[]> seeds() {
            return List.of(Template.workbook());
        }

        @Override
        byte[] neighbour(byte[] seed, Random chance) {
            return WorkbookMutator.mutated(seed, chance);
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) throws IOException {
            return list(Files.write(folder.resolve("l.xlsx"), bytes));
        }
    },
    READINGS("") {
        @Override
        List<byte[]> seeds() {
            return datasets("lantern-yard/measured.csv");
        }

        @Override
        byte[] neighbour(byte[] seed, Random chance) {
            return chance.nextInt(5) == 0 ? ByteMutator.mutated(seed, chance) : TableMutator.mutated(seed, chance);
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) {
            Measured measured = MeasuredCsv.read(new String(bytes, StandardCharsets.UTF_8), YARD, YARD_BUILT);
            List<String> messages = new ArrayList<>(measured.problems());
            messages.addAll(measured.notes());
            if (measured.problems().isEmpty()) {
                readsBack(measured.in(YARD), Format.JSON);
            }
            return messages;
        }
    },
    TITLE("title") {
        @Override
        List<byte[]> seeds() {
            return List.of(TITLE_TEXT.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        List<String> read(byte[] bytes, String name, Path folder) {
            return messages(TitleBlockFile.read(new ByteArrayInputStream(bytes), name));
        }
    };

    private static final int MOST_READ_BACK = 300;
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Project YARD = project("lantern-yard/project.json");
    private static final Plan YARD_BUILT = PlanFile.read(dataset("lantern-yard/built.plan.json"), "b.json")
            .value()
            .orElseThrow();
    private static final Project CHAPEL = project("willow-chapel/project.json");
    private static final String PORTFOLIO_TEXT = """
            {"format": "evenrise-portfolio/1", "projects": ["halls", "east.json"], "first_seed": 3, "seeds": 2, "moves": 50,
             "variants": [{"name": "as-is"}, {"name": "harder", "changes": [
               {"at": "/loads/*/inrush_peak_a", "factor": 1.5}, {"at": "/name", "text": "x"}, {"at": "/a", "number": 1}]}]}
            """;

    private static final String TITLE_TEXT = """
            {"format": "evenrise-title/1", "client": "Harrow Trust", "site": "Level 2", "number": "17-4", "drawn_by": "AF",
             "checked_by": "MK", "sheet_prefix": "E", "revisions": [
               {"revision": "A", "date": "2026-10-02", "what": "first issue"},
               {"revision": "B", "date": "2026-11-30", "what": "larger feeder", "by": "AF"}]}
            """;

    private static final String MAPPING_TEXT = """
            format: evenrise-mapping/1
            header_row: 2
            columns: {quantity: Qty, name: What, voltage: V}
            system: three-phase
            line_to_neutral_v: 230
            frequency_hz: 50
            breaker_a: 16
            continuous_fraction: 0.8
            curve: C
            panel_slots: 42
            board_outputs: 12
            """;

    private final String schema;

    Source(String schema) {
        this.schema = schema;
    }

    abstract List<byte[]> seeds();

    /** @return what is said of it; what is thrown is a fault of ours */
    abstract List<String> read(byte[] bytes, String name, Path folder) throws IOException;

    byte[] neighbour(byte[] seed, Random chance) throws IOException {
        if (chance.nextInt(6) == 0) {
            return ByteMutator.mutated(seed, chance);
        }
        JsonNode tree = new TreeMutator(Schema.of(schema), chance.nextBoolean(), chance).mutated(JSON.readTree(seed));
        byte[] bytes = JsonText.of(tree).getBytes(StandardCharsets.UTF_8);
        return chance.nextInt(12) == 0 ? ByteMutator.mutated(bytes, chance) : bytes;
    }

    private static List<String> list(Path file) {
        try {
            EquipmentList list = EquipmentList.read(file, Mapping.USUAL, "List");
            list.project().ifPresent(project -> readsBack(project, Format.YAML));
            List<String> messages = new ArrayList<>(list.problems());
            messages.addAll(list.questions());
            messages.addAll(list.guesses());
            messages.addAll(list.notRead());
            messages.addAll(list.outside());
            return messages;
        } catch (IOException e) {
            return List.of(String.valueOf(e.getMessage()));
        }
    }

    /** What we write, we read as the same. */
    private static void readsBack(Project project, Format format) {
        readsBack(project, SideNotes.NONE, format);
    }

    private static void readsBack(Project project, SideNotes notes, Format format) {
        if (project.loads().size() > MOST_READ_BACK) {
            return;
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ProjectFile.write(project, notes, out, format);
        } catch (WriteFailed e) {
            throw new IllegalStateException(e);
        }
        Reading<Project> again = ProjectFile.read(out.toByteArray(), format == Format.YAML ? "p.yaml" : "p.json");
        // Cautions stand in every file that is written.
        boolean isSame = again.value()
                .map(read -> read.withCautions(project.cautions()).equals(project))
                .orElse(false);
        boolean isNoted = new HashSet<>(again.notes().places()).equals(new HashSet<>(notes.places()));
        if (!isSame || !isNoted) {
            throw new IllegalStateException("what is written is not read back as " + format + ": " + messages(again));
        }
    }

    private static List<String> messages(Reading<?> reading) {
        return reading.problems().stream().map(Problem::message).toList();
    }

    private static List<byte[]> datasets(String... names) {
        List<byte[]> all = new ArrayList<>();
        for (String each : names) {
            all.add(dataset(each));
        }
        return all;
    }

    static byte[] dataset(String name) {
        try {
            return Files.readAllBytes(Path.of("..", "datasets").resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Project project(String name) {
        return ProjectFile.read(dataset(name), "p.json").value().orElseThrow();
    }
}
