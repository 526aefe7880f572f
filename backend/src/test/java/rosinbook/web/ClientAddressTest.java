package rosinbook.web;

import java.io.IOException;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Whoever guesses is counted as one, whichever of their addresses they write from. */
class ClientAddressTest {
    private final Band band;

    ClientAddressTest() throws IOException {
        band = new Band(true);
    }

    @AfterEach
    void close() throws IOException {
        band.close();
    }

    private Answer signIn(Band.Player player, String address, String passphrase) {
        return band.stranger()
                .with("X-Forwarded-For", address)
                .form("/sign-in", Map.of("name", player.name, "passphrase", passphrase));
    }

    /** RFC 4291, section 2.5.4: a network has the first 64 bits, and whoever has one has all its addresses. */
    @Test
    void the_addresses_of_one_network_are_one() {
        for (String address : new String[] {
            "2001:db8:1:2::1",
            "2001:DB8:1:2:ffff::2",
            "[2001:db8:1:2::3]",
            "[2001:db8:1:2::3]:443",
            "2001:db8:1:2::4%eth0"
        }) {
            signIn(band.ada, address, "a guess of somebody's");
        }
        signIn(band.ada, "2001:db8:1:2::5", band.ada.passphrase).expect(429);
        signIn(band.ada, "2001:db8:1:3::5", band.ada.passphrase).expect(303);
    }

    @Test
    void a_port_makes_no_other_address_and_neither_does_an_older_one_in_newer_clothes() {
        for (String address : new String[] {
            "198.51.100.7", "198.51.100.7:555", "198.51.100.7:556", "::ffff:198.51.100.7", "[::ffff:c633:6407]:1"
        }) {
            signIn(band.jonas, address, "a guess of somebody's");
        }
        signIn(band.jonas, "198.51.100.7:557", band.jonas.passphrase).expect(429);
        signIn(band.jonas, "198.51.100.8", band.jonas.passphrase).expect(303);
    }
}
