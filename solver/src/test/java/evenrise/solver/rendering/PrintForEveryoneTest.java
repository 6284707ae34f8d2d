package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.rework.AnOrderedWork;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** Printed sheets are PDF/UA-1 (ISO 14289-1), as a validator that is not ours judges them. */
class PrintForEveryoneTest {
    private static final int MOST_FAULTS = 20;

    @BeforeAll
    static void validator() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    /** What breaks the standard, in the validator's words. */
    private static List<String> faults(byte[] sheets) throws Exception {
        try (PDFAParser parser = Foundries.defaultInstance()
                        .createParser(new ByteArrayInputStream(sheets), PDFAFlavour.PDFUA_1);
                PDFAValidator validator = Foundries.defaultInstance()
                        .createValidator(PDFAFlavour.PDFUA_1, MOST_FAULTS, false, false, false)) {
            return validator.validate(parser).getTestAssertions().stream()
                    .filter(each -> each.getStatus() == TestAssertion.Status.FAILED)
                    .map(each -> each.getRuleId().getClause() + " " + each.getMessage() + " at "
                            + each.getLocation().getContext())
                    .toList();
        }
    }

    private static byte[] sheets(Document document) {
        return new PrintedSheets(document).on(PrintedSheets.Paper.A4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"fennel-studio", "tin-shed"})
    void smallDemosBreakNothingOfTheStandard(String demo) throws Exception {
        assertThat(faults(sheets(DrawnPages.of(demo).document()))).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void labelsBreakNothingOfTheStandard(LabelKind kind) throws Exception {
        LabelSheets labels =
                new LabelSheets(DrawnPages.of("tin-shed").document(), SheetWords.in(SheetLanguage.EN), "plan.html");

        assertThat(faults(labels.of(kind, LabelStock.NAMED.get("a4-99.1x67.7")).pdf()))
                .isEmpty();
    }

    @ParameterizedTest
    @EnumSource(
            value = SheetLanguage.class,
            names = {"DE", "FR"})
    void sheetsForSiteInAnotherLanguageBreakNothingOfTheStandard(SheetLanguage language) throws Exception {
        DrawnPages.Planned planned = DrawnPages.of("tin-shed");
        SiteDocument site = SiteDocument.of(
                planned.document(),
                Evaluation.of(
                        planned.layout(), () -> ProvenBounds.of(planned.layout().project())),
                SheetWords.in(language));

        assertThat(new SiteBooklet(site, SheetSection.ALL)
                        .on(List.of(PrintedSheets.Paper.values()))
                        .values())
                .hasSize(2)
                .allSatisfy(sheets -> assertThat(faults(sheets)).isEmpty());
    }

    @Test
    @Tag("slow")
    void aLargeDemoBreaksNothingOfTheStandard() throws Exception {
        assertThat(faults(sheets(DrawnPages.kept("meridian-hall").document()))).isEmpty();
    }

    @Test
    void sheetsOfANightBreakNothingOfTheStandard() throws Exception {
        assertThat(faults(WorkPrintTest.print(new AnOrderedWork("mover").sheets(300.0, 300.0), PrintedSheets.Paper.A4)))
                .isEmpty();
    }

    /** So that nobody believes a validator that sees nothing. */
    @Test
    void sheetsWithoutTheirTreeBreakIt() throws Exception {
        ByteArrayOutputStream bare = new ByteArrayOutputStream();
        try (PDDocument pdf = Loader.loadPDF(sheets(DrawnPages.of("tin-shed").document()))) {
            pdf.getDocumentCatalog().getCOSObject().removeItem(COSName.STRUCT_TREE_ROOT);
            pdf.save(bare);
        }

        assertThat(faults(bare.toByteArray())).isNotEmpty();
    }

    @Test
    void everySectionIsReadInTheOrderOfThePages() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(sheets(DrawnPages.of("tin-shed").document()))) {
            PDStructureTreeRoot root = pdf.getDocumentCatalog().getStructureTreeRoot();
            PDStructureElement document = (PDStructureElement) root.getKids().get(0);

            assertThat(document.getStructureType()).isEqualTo("Document");
            assertThat(document.getKids())
                    .hasSizeGreaterThan(10)
                    .allSatisfy(kid -> assertThat(((PDStructureElement) kid).getStructureType())
                            .isEqualTo("Sect"));
            assertThat(root.getParentTreeNextKey()).isGreaterThanOrEqualTo(pdf.getNumberOfPages());
        }
    }
}
