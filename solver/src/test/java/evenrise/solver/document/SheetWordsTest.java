package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import evenrise.model.plan.Cautions;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every language says all that English says, about the same. */
class SheetWordsTest {
    private static final SheetWords ENGLISH = SheetWords.in(SheetLanguage.EN);

    private static Set<String> places(String text) {
        return Pattern.compile("\\{\\d}")
                .matcher(text)
                .results()
                .map(each -> each.group())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @EnumSource(SheetLanguage.class)
    void hasTheSameKeysWithTheSamePlaces(SheetLanguage language) {
        SheetWords words = SheetWords.in(language);

        assertThat(words.all().keySet()).isEqualTo(ENGLISH.all().keySet());
        words.all().forEach((key, text) -> {
            assertThat(text).as(key).isNotBlank();
            assertThat(places(text)).as(key).isEqualTo(places(ENGLISH.all().get(key)));
        });
    }

    @Test
    void theCautionsThatAreTranslatedAreThoseOfThisProgram() {
        for (int i = 0; i < Cautions.ALL.size(); i++) {
            assertThat(ENGLISH.say("cautions." + i)).isEqualTo(Cautions.ALL.get(i));
        }
        assertThat(ENGLISH.all()).doesNotContainKey("cautions." + Cautions.ALL.size());
    }

    @Test
    void aTranslationKeepsTheEnglishCautionsBesideIt() {
        assertThat(SheetWords.in(SheetLanguage.DE).cautions())
                .hasSize(2 * Cautions.ALL.size())
                .containsAll(Cautions.ALL);
        assertThat(ENGLISH.cautions()).isEqualTo(Cautions.ALL);
    }

    @Test
    void whatAPartSaysIsNotTakenForAPlace() {
        assertThat(ENGLISH.say("label.from-to", "{1}", "L1")).isEqualTo("from {1} to L1");
    }

    @Test
    void numbersHaveTheCommaOfTheLanguage() {
        assertThat(SheetWords.in(SheetLanguage.FR).number("0.25")).isEqualTo("0,25");
        assertThat(ENGLISH.number("0.25")).isEqualTo("0.25");
    }

    @Test
    void anUnknownKeyIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> ENGLISH.say("nowhere"));
    }
}
