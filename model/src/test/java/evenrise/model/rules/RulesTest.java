package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Fixtures;
import evenrise.model.contract.Words;
import evenrise.model.plan.BrokenRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Walks the rules and expects each one's companions: its class, its test group, its paragraph, its cases. */
class RulesTest {
    private static final List<Class<?>> TESTS = List.of(
            BoardRulesTest.class,
            PlaceRulesTest.class,
            SequenceRulesTest.class,
            GroupRulesTest.class,
            ElectricalRulesTest.class,
            PlantRulesTest.class);

    /** Test groups whose natural name is taken by what they test. */
    private static final Map<String, String> OTHER_NAMES = Map.of("Phase", "Phases");

    static List<Rule> rules() {
        return Rules.ALL;
    }

    @ParameterizedTest
    @MethodSource("rules")
    void hasAClassOfItsName(Rule rule) {
        assertThat(rule.getClass().getSimpleName()).isEqualTo(camel(rule.id()) + "Rule");
    }

    @ParameterizedTest
    @MethodSource("rules")
    void hasAGroupOfTestsBrokenAtTheLimitAndKept(Rule rule) {
        Map<String, Class<?>> groups = new HashMap<>();
        for (Class<?> test : TESTS) {
            Arrays.stream(test.getDeclaredClasses()).forEach(each -> groups.put(each.getSimpleName(), each));
        }
        String name = OTHER_NAMES.getOrDefault(camel(rule.id()), camel(rule.id()));

        assertThat(groups).containsKey(name);
        assertThat(groups.get(name).isAnnotationPresent(Nested.class)).isTrue();
        assertThat(Arrays.stream(groups.get(name).getDeclaredMethods())
                        .filter(method -> method.isAnnotationPresent(Test.class)))
                .hasSizeGreaterThanOrEqualTo(3);
    }

    @ParameterizedTest
    @MethodSource("rules")
    void hasAParagraphThatSaysWhyAndHowToCure(Rule rule) throws IOException {
        String page = Files.readString(Docs.page("rules.md"));

        assertThat(page).contains("\n## " + rule.id() + "\n");
        assertThat(paragraph(rule)).contains("Allowed:", "Why:", "Likely cure:");
    }

    private static String paragraph(Rule rule) throws IOException {
        String page = Files.readString(Docs.page("rules.md"));
        return page.substring(page.indexOf("\n## " + rule.id() + "\n") + 1)
                .lines()
                .skip(1)
                .takeWhile(line -> !line.startsWith("## "))
                .collect(Collectors.joining("\n"));
    }

    @ParameterizedTest
    @MethodSource("rules")
    void namesTheKindsOfBreakingIt(Rule rule) throws IOException {
        String kinds = Arrays.stream(BrokenKind.values())
                .filter(kind -> kind.rule().equals(rule.id()))
                .map(kind -> "`" + Words.word(kind) + "`")
                .collect(Collectors.joining(", "));

        assertThat(kinds).isNotEmpty();
        assertThat(paragraph(rule)).contains("Kinds: " + kinds + ".");
    }

    @Test
    void countsWhilePartsAreOffUnlessItSaysOtherwise() {
        Rule saysNothing = new Rule() {
            @Override
            public String id() {
                return "new";
            }

            @Override
            public List<BrokenRule> broken(Layout layout) {
                return List.of();
            }
        };

        assertThat(saysNothing.countsWhilePartsAreOff(BROKEN, INDEX)).isTrue();
        assertThat(Rules.ALL.stream()
                        .filter(rule -> !rule.countsWhilePartsAreOff(BROKEN, INDEX))
                        .map(Rule::id))
                .containsExactly(
                        "assigned",
                        "processing-first",
                        "amplifiers-last",
                        "order",
                        "inrush-limit",
                        "event-inrush",
                        "duration",
                        "spare");
    }

    private static final ProjectIndex INDEX =
            new ProjectIndex(Fixtures.aProject().build());
    private static final BrokenRule BROKEN =
            BrokenRule.builder().rule("any").message("any").build();

    @ParameterizedTest
    @MethodSource("rules")
    void hasACaseThatBreaksIt(Rule rule) throws IOException {
        try (Stream<Path> cases = Files.list(Path.of("src/test/resources/cases"))) {
            assertThat(cases.map(each -> each.getFileName().toString())).contains("broken-" + rule.id());
        }
    }

    @Test
    void pageSpeaksOfNoOtherRule() throws IOException {
        List<String> headings = Files.readString(Docs.page("rules.md"))
                .lines()
                .filter(line -> line.startsWith("## "))
                .map(line -> line.substring(3))
                .toList();

        assertThat(headings)
                .containsExactlyElementsOf(Rules.ALL.stream().map(Rule::id).toList());
    }

    private static String camel(String id) {
        return Arrays.stream(id.split("-"))
                .map(word -> Character.toUpperCase(word.charAt(0)) + word.substring(1))
                .collect(Collectors.joining());
    }
}
