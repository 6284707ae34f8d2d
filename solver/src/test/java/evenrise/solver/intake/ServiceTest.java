package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.table.HeaderWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ServiceTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Fire alarm panel",
                "Emergency lighting inverter",
                "Exit sign",
                "Life safety",
                "Voice evacuation rack",
                "Smoke vent controller",
                "Brandmeldezentrale",
                "Feuerwehrbedienfeld",
                "Sprachalarmierung Sprachalarm",
                "Notbeleuchtung",
                "Sicherheitsbeleuchtung Foyer",
                "Rettungszeichenleuchte",
                "Alarme incendie",
                "Éclairage de sécurité",
                "BAES",
                "Central de detección de incendios",
                "Alumbrado de emergencia"
            })
    void knowsLifeSafety(String text) {
        assertThat(Service.saysLifeSafety(HeaderWords.words(text))).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Emergency stop button",
                "Fire effect projector",
                "Exit amplifier",
                "House light",
                "Smoke machine",
                "Firewall",
                "Campfire lamp",
                "Feuerwerk Steuerung",
                "Lichtpult"
            })
    void takesNothingElseForIt(String text) {
        assertThat(Service.saysLifeSafety(HeaderWords.words(text))).isFalse();
    }

    @Test
    void asksAboutSuppliesAndNetworkCores() {
        for (String text : new String[] {
            "UPS 3 kVA", "USV Regie", "Onduleur", "SAI", "Core network switch A", "Core switch", "Netzwerkkern"
        }) {
            assertThat(Service.asked(HeaderWords.words(text))).as(text).isPresent();
        }
        for (String text : new String[] {"Amplifier", "Stage switch", "Score display", "Backups"}) {
            assertThat(Service.asked(HeaderWords.words(text))).as(text).isEmpty();
        }
    }

    @Test
    void readsOrdersToLeaveOn() {
        for (String text : new String[] {
            "do not switch",
            "Always on!",
            "Bitte nicht schalten",
            "ne pas couper",
            "no conmutar",
            "un-switched (unswitched)"
        }) {
            assertThat(Service.saysLeaveOn(HeaderWords.words(text))).as(text).isTrue();
        }
        assertThat(Service.saysLeaveOn(HeaderWords.words("switch off last"))).isFalse();
    }
}
