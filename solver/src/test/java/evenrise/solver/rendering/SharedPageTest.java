package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Templates that stand below each other keep each its own style. */
class SharedPageTest {
    private static String page(String style, String body) {
        return "<html><head><style></style><style>td{color:red}/*own*/" + style + "</style></head><body>" + body
                + "</body></html>";
    }

    @Test
    void aRuleHoldsForItsOwnPartOnly() {
        assertThat(SharedPage.within(".on1", "td,th.n{a:1}\n.x .y{b:2}"))
                .isEqualTo(".on1 td,.on1 th.n{a:1}.on1 .x .y{b:2}");
    }

    @Test
    void partsStandBelowEachOtherUnderTheStyleOfAll() {
        String both = SharedPage.of(List.of(page("td{a:1}", "<p>first</p>"), page("td{a:2}", "<p>second</p>")));

        assertThat(both)
                .startsWith("<html><head><style></style><style>td{color:red}/*own*/")
                .contains(".on0 td{a:1}", ".on1 td{a:2}")
                .contains("<div class=\"on0\"><p>first</p></div><div class=\"on1 below\"><p>second</p></div>")
                .endsWith("</body></html>")
                .containsOnlyOnce("</style></head><body>");
    }

    /** A name that looks like the mark stands before it, in the margins. */
    @Test
    void aNameCannotMoveWhereTheOwnStyleBegins() {
        String odd = "<html><head><style></style><style>@page{content:\"/*own*/ x{y:z}\"}/*own*/td{a:1}"
                + "</style></head><body></body></html>";

        assertThat(SharedPage.of(List.of(odd))).contains(".on0 td{a:1}").doesNotContain(".on0 x");
    }
}
