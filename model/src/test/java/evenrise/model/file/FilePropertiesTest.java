package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

@Tag("slow")
class FilePropertiesTest {
    private static final String SEED = "4711";

    @Property(tries = 300, seed = SEED)
    void whatIsWrittenReadsBackEqual(@ForAll long seed, @ForAll Format format) {
        Project project = ARandomProject.of(seed);
        String text = FileText.of(project, format);

        Reading<Project> back = ProjectFile.read(text.getBytes(StandardCharsets.UTF_8), name(format));

        assertThat(back.problems()).isEmpty();
        assertThat(back.value()).contains(project);
        assertThat(FileText.of(back.value().orElseThrow(), format)).isEqualTo(text);
    }

    @Property(tries = 300, seed = SEED)
    void plansReadBackEqual(
            @ForAll Format format,
            @ForAll String words,
            @ForAll @DoubleRange(min = 0, max = 1e9) double number,
            @ForAll boolean full,
            @ForAll long seed) {
        String text = "x" + words;
        Plan plan = Plan.builder()
                .cautions(List.of(text))
                .boards(List.of(new BoardSetting(text, number, number / 3)))
                .assignments(List.of(Assignment.builder()
                        .load(text)
                        .panel(text)
                        .slot(-3)
                        .phases(List.of(Phase.A, Phase.B))
                        .board(full ? Optional.of(text) : Optional.empty())
                        .output(full ? OptionalInt.of(2) : OptionalInt.empty())
                        .onSeconds(full ? OptionalDouble.of(number) : OptionalDouble.empty())
                        .offSeconds(full ? OptionalDouble.of(-0.0) : OptionalDouble.empty())
                        .build()))
                .metrics(
                        full
                                ? Optional.of(Metrics.builder()
                                        .peakInrushAmps(number)
                                        .peakPhase(Phase.C)
                                        .peakAtSeconds(1)
                                        .supplyImbalancePercent(2)
                                        .worstPanelImbalancePercent(3)
                                        .supplyNeutralAmps(4)
                                        .durationSeconds(5)
                                        .boardsUsed(6)
                                        .hardViolations(7)
                                        .objective(number / 7)
                                        .build())
                                : Optional.empty())
                .violations(
                        full
                                ? List.of(BrokenRule.builder()
                                        .rule("slot")
                                        .message(text)
                                        .kind(text)
                                        .subjects(List.of(
                                                new Subject(SubjectKind.BOARD, text),
                                                new Subject(SubjectKind.LOAD, text)))
                                        .place(text)
                                        .figure(number)
                                        .limit(number / 3)
                                        .unit("A")
                                        .clause(text)
                                        .cure(text)
                                        .build())
                                : List.of())
                .madeBy(
                        full
                                ? Optional.of(MadeBy.builder()
                                        .softwareVersion("1")
                                        .projectSha256(text)
                                        .seed(seed)
                                        .threads(2)
                                        .movesAllowed(seed)
                                        .build())
                                : Optional.empty())
                .build();

        Reading<Plan> back = PlanFile.read(FileText.of(plan, format).getBytes(StandardCharsets.UTF_8), name(format));

        assertThat(back.problems()).isEmpty();
        assertThat(back.value()).contains(plan);
    }

    @Property(tries = 500, seed = SEED)
    void garbageNeverThrows(@ForAll @Size(max = 400) byte[] bytes, @ForAll Format format) {
        Reading<Project> reading = ProjectFile.read(bytes, name(format));

        assertThat(reading.value()).isEmpty();
        assertThat(reading.problems()).isNotEmpty().allSatisfy(FilePropertiesTest::isPrintable);
    }

    @Property(tries = 2000, seed = SEED)
    void aMutatedFileNeverThrows(
            @ForAll @IntRange(max = 40) int project,
            @ForAll Format format,
            @ForAll @Size(min = 1, max = 4) List<@IntRange(min = 0, max = 1_000_000) Integer> places,
            @ForAll @Size(4) List<Byte> bytes) {
        byte[] text = FileText.of(ARandomProject.of(project), format).getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < places.size(); i++) {
            text[places.get(i) % text.length] = bytes.get(i);
        }

        Reading<Project> reading = ProjectFile.read(text, name(format));

        assertThat(reading.value().isPresent() || !reading.problems().isEmpty()).isTrue();
        assertThat(reading.problems()).allSatisfy(FilePropertiesTest::isPrintable);
    }

    /** Other words, numbers, brackets in the place of a token: well-formed more often than changed bytes. */
    @Property(tries = 2000, seed = SEED)
    void aFileWithTokensExchangedNeverThrows(
            @ForAll @IntRange(max = 40) int project,
            @ForAll @Size(min = 1, max = 3) List<@IntRange(min = 0, max = 1_000_000) Integer> from,
            @ForAll @Size(3) List<@IntRange(min = 0, max = 1_000_000) Integer> to) {
        String text = FileText.of(ARandomProject.of(project), Format.JSON);
        String[] tokens = text.split("(?<=[,:{}\\[\\]])|(?=[,:{}\\[\\]])");
        String[] others = {
            "null", "-1", "0", "1e99", "\"\"", "[]", "{}", "true", "\"L1\"", "[\"L1\", \"L1\"]", "[5, 5, 5]", "NaN"
        };
        for (int i = 0; i < from.size(); i++) {
            int at = from.get(i) % tokens.length;
            if (!tokens[at].matches("[,:{}\\[\\]]")) {
                tokens[at] =
                        to.get(i) % 2 == 0 ? others[to.get(i) / 2 % others.length] : tokens[to.get(i) % tokens.length];
            }
        }

        Reading<Project> reading = ProjectFile.read(String.join("", tokens).getBytes(StandardCharsets.UTF_8), "x.json");

        assertThat(reading.value().isPresent() || !reading.problems().isEmpty()).isTrue();
        assertThat(reading.problems()).allSatisfy(FilePropertiesTest::isPrintable);
    }

    private static void isPrintable(Problem problem) {
        assertThat(problem.message().chars()).noneMatch(Character::isISOControl);
    }

    private static String name(Format format) {
        return format == Format.YAML ? "x.yaml" : "x.json";
    }
}
