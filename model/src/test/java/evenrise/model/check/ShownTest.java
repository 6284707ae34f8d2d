package evenrise.model.check;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.contract.Decimals;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShownTest {
    @Test
    void escapesWhatIsNotVisible() {
        assertThat(Shown.quoted("a\u001b[31mb\nc\u202e")).isEqualTo("'a\\u001B[31mb\\u000Ac\\u202E'");
    }

    @Test
    void shortensWhatIsLong() {
        assertThat(Shown.plain("x".repeat(61))).isEqualTo("x".repeat(60) + "…");
        assertThat(Shown.plain("x".repeat(60))).isEqualTo("x".repeat(60));
    }

    @Test
    void countsWhatIsBeyondTheFirstFew() {
        assertThat(Shown.quoted(List.of("1", "2", "3", "4", "5", "6", "7")))
                .isEqualTo("'1', '2', '3', '4', '5' and 2 more");
    }

    @Test
    void writesNumbersForPeople() {
        assertThat(Decimals.toThousandths(40)).isEqualTo("40");
        assertThat(Decimals.toThousandths(28.28427)).isEqualTo("28.284");
        assertThat(Decimals.toThousandths(0.5)).isEqualTo("0.5");
    }
}
