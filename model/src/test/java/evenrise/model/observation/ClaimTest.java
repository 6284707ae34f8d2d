package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ClaimTest {
    /** A load on other phases comes on when it is due, to the last bit where a clock has no offset. */
    @Test
    void mayShowAtOneMomentAlone() {
        assertThat(Claim.moments(1, 1)).containsExactly(1.0);
        assertThat(Claim.moments(1, 2)).containsExactlyInAnyOrder(1.0, 2.0);
    }
}
