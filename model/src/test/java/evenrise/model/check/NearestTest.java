package evenrise.model.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
    private static final List<String> KNOWN = List.of("running_a", "idle_a", "settle_s", "poles");

    @Test
    void findsASlipOfTheFinger() {
        assertThat(Nearest.to("runing_a", KNOWN)).contains("running_a");
        assertThat(Nearest.to("settel_s", KNOWN)).contains("settle_s");
        assertThat(Nearest.to("Poles", KNOWN)).contains("poles");
    }

    @Test
    void findsNothingInWhatIsFar() {
        assertThat(Nearest.to("colour", KNOWN)).isEmpty();
        assertThat(Nearest.to("", KNOWN)).isEmpty();
    }

    @Test
    void countsInsertionsDeletionsReplacementsAndSwaps() {
        assertThat(Nearest.distance("abcd", "abcd", 9)).isZero();
        assertThat(Nearest.distance("abcd", "abxd", 9)).isEqualTo(1);
        assertThat(Nearest.distance("abcd", "acbd", 9)).isEqualTo(1);
        assertThat(Nearest.distance("abcd", "abd", 9)).isEqualTo(1);
        assertThat(Nearest.distance("abcd", "", 9)).isEqualTo(4);
        assertThat(Nearest.distance("abcd", "wxyz", 3)).isEqualTo(3);
    }
}
