package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GridHostsTest {
    @Test
    void triesEveryUsualPortOfAHostAndOneThatIsNamedAlone() {
        GridHosts hosts = GridHosts.of("127.0.0.1, localhost:4000");

        assertThat(hosts.addresses())
                .hasSize(GridHosts.USUAL_PORTS + 1)
                .contains("127.0.0.1:27650", "127.0.0.1:27669", "localhost:4000");
        assertThat(hosts).hasToString("127.0.0.1, localhost:4000");
    }

    @Test
    void readsAddressesOfTheSixthVersion() {
        assertThat(GridHosts.of("[::1]:4000").addresses()).containsExactly("[::1]:4000");
        assertThat(GridHosts.of("[::1]").addresses()).contains("[::1]:27650");
        assertThat(GridHosts.of("[::1]").areLoopback()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a,,b", "a:", ":4000", "a:80", "a:70000", "a b", "a:x"})
    void refusesWhatIsNoHost(String text) {
        assertThatThrownBy(() -> GridHosts.of(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("expected");
    }

    @Test
    void staysOnThisMachineWithoutKeys() {
        assertThat(GridHosts.of("127.0.0.1,localhost").areLoopback()).isTrue();
        assertThatThrownBy(() ->
                        new GridSite(GridHosts.of("127.0.0.1,192.0.2.1"), Optional.empty(), "1", Optional.empty()))
                .isInstanceOf(GridUnavailable.class)
                .hasMessageContaining("without keys nothing is joined outside this machine");
    }
}
