package evenrise.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NeedsTest {
    private static final String NOWHERE = "no-program-has-this-name";

    @Test
    void skipsAndSaysWhatIsMissing() {
        var result = Needs.Condition.evaluate(List.of(NOWHERE), null);

        assertThat(result.isDisabled()).isTrue();
        assertThat(result.getReason().orElseThrow()).contains(NOWHERE);
    }

    @Test
    void letsTheTestFailInCi() {
        assertThat(Needs.Condition.evaluate(List.of(NOWHERE), "true").isDisabled())
                .isFalse();
    }

    @Test
    void runsWhereNothingIsMissing() {
        assertThat(Needs.Condition.evaluate(List.of(), null).isDisabled()).isFalse();
    }
}
