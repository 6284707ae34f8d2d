package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.ARandomProject;
import evenrise.model.Needs;
import evenrise.model.file.ProjectFile;
import evenrise.model.handout.Handout;
import evenrise.model.handout.PageReferee;
import evenrise.model.nodal.RandomPlant;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The referee in a page beside the one in Java: the same verdicts word for word, the same figures to 1e-9. A few random plans
 * as a rule; {@code -Devenrise.tried=1000} for many.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PageRefereeTest {
    private static final int TRIED = Integer.getInteger("evenrise.tried", 24);
    private static final int DRAWN_OF_A_DEMO = 2;
    private static final double SAME_RATIO = 1e-9;
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private static Path folder;

    private Browser browser;

    @BeforeAll
    void openThePageOfAReferee() throws IOException {
        browser = new Browser();
        Path page = folder.resolve("referee.html");
        try (InputStream script = getClass().getResourceAsStream("/evenrise/rendering/referee.js")) {
            assertThat(script).as("the build compiles the referee").isNotNull();
            Files.writeString(
                    page,
                    "<!DOCTYPE html><meta charset=utf-8><script>var referee={};(function(exports){"
                            + new String(script.readAllBytes(), StandardCharsets.UTF_8)
                            + "})(referee);document.documentElement.dataset.ready='true'</script>");
        }
        browser.open(page);
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    static Stream<Path> demos() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("../datasets"))) {
            return folders.map(each -> each.resolve("project.json")).filter(Files::exists).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void saysTheSameOfPlansOfADemo(Path file) {
        Project project = ProjectFile.read(file).value().orElseThrow();

        for (int seed = 1; seed <= DRAWN_OF_A_DEMO; seed++) {
            saysTheSame(project, drawn(project, new Random(seed)));
        }
    }

    @Test
    void saysTheSameOfRandomPlansWithAndWithoutBrokenRules() {
        int broken = 0;
        for (int seed = 1; seed <= TRIED; seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            saysTheSame(planted.project(), planted.plan());
            Plan spoilt = spoilt(planted.project(), planted.plan(), new Random(seed));
            broken += saysTheSame(planted.project(), spoilt);
            Layout tree = RandomPlant.of(seed);
            saysTheSame(tree.project(), tree.plan());
        }

        assertThat(broken).isPositive();
    }

    @Test
    void makesTheSameMovesAndPromisesTheSameOfEveryPlace() {
        for (int seed = 1; seed <= Math.min(TRIED, 12); seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            saysTheSame(planted.project(), planted.plan());
            Assignment first = planted.plan().assignments().get(0);
            String panel = planted.project().panels().get(0).id();

            same(PageReferee.slots(first.load(), panel), called("slots", first.load(), panel));
            Random random = new Random(seed);
            for (int move = 0; move < 4; move++) {
                String asked = anyMove(planted.project(), random);
                same(PageReferee.move(asked), called("move", asked));
            }
            same(PageReferee.undo(), called("undo"));
            same(PageReferee.moves(), called("moves"));
        }
    }

    private static String anyMove(Project project, Random random) {
        String load =
                project.loads().get(random.nextInt(project.loads().size())).id();
        Map<String, Object> move = new TreeMap<>(Map.of("load", load));
        if (random.nextBoolean() || project.boards().isEmpty()) {
            int panel = random.nextInt(project.panels().size());
            move.put("panel", project.panels().get(panel).id());
            move.put("slot", 1 + random.nextInt(project.panels().get(panel).slots()));
        } else {
            move.put(
                    "board",
                    project.boards()
                            .get(random.nextInt(project.boards().size()))
                            .id());
            move.put("output", 1 + random.nextInt(4));
        }
        return JSON.valueToTree(move).toString();
    }

    /** Every load somewhere, right or wrong. */
    private static Plan drawn(Project project, Random random) {
        List<Assignment> places = new ArrayList<>();
        project.loads().forEach(load -> places.add(anywhere(project, load.id(), random)));
        return Plan.builder().boards(List.of()).assignments(places).build();
    }

    /** A few loads taken out, twice there, or anywhere. */
    private static Plan spoilt(Project project, Plan plan, Random random) {
        List<Assignment> places = new ArrayList<>();
        for (Assignment each : plan.assignments()) {
            int fate = random.nextInt(8);
            if (fate > 0) {
                places.add(fate == 1 ? anywhere(project, each.load(), random) : each);
            }
            if (fate == 2) {
                places.add(anywhere(project, each.load(), random));
            }
        }
        return plan.withAssignments(places);
    }

    private static Assignment anywhere(Project project, String load, Random random) {
        boolean switched = !project.boards().isEmpty() && random.nextInt(5) > 0;
        return Assignment.builder()
                .load(load)
                .panel(project.panels()
                        .get(random.nextInt(project.panels().size()))
                        .id())
                .slot(random.nextInt(project.panels().get(0).slots() + 2))
                .phases(List.of())
                .board(
                        switched
                                ? Optional.of(project.boards()
                                        .get(random.nextInt(project.boards().size()))
                                        .id())
                                : Optional.empty())
                .output(switched ? OptionalInt.of(random.nextInt(10)) : OptionalInt.empty())
                .onSeconds(switched ? OptionalDouble.of(random.nextInt(20) / 4.0) : OptionalDouble.empty())
                .build();
    }

    /** How many rules both say are broken. */
    private int saysTheSame(Project project, Plan plan) {
        String handout = Handout.of("0".repeat(64), project, plan).text();

        return same(PageReferee.open(handout), called("open", handout))
                .at("/now/broken")
                .size();
    }

    private String called(String what, Object... arguments) {
        String names = String.join(
                ",",
                IntStream.range(0, arguments.length)
                        .mapToObj(each -> "arguments[" + each + "]")
                        .toList());
        return (String) browser.script("return referee." + what + "(" + names + ")", arguments);
    }

    private static JsonNode same(String java, String page) {
        try {
            JsonNode expected = JSON.readTree(java);
            same("", expected, JSON.readTree(page));
            return expected;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static void same(String at, JsonNode java, JsonNode page) {
        if (java.isNumber()) {
            double size = Math.max(1e-6, Math.abs(java.doubleValue()));
            assertThat(page.doubleValue()).as(at).isCloseTo(java.doubleValue(), within(SAME_RATIO * size));
        } else if (java.isContainerNode()) {
            assertThat(page.size()).as(at).isEqualTo(java.size());
            java.fieldNames().forEachRemaining(key -> same(at + "/" + key, java.get(key), page.path(key)));
            for (int i = 0; java.isArray() && i < java.size(); i++) {
                same(at + "/" + i, java.get(i), page.get(i));
            }
        } else {
            assertThat(page).as(at).isEqualTo(java);
        }
    }
}
