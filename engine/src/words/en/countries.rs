//! Names of the countries and territories of the towns list, in everyday short form.

/// Code, space, name, bar; in the order of the codes (ISO 3166-1 alpha-2). One string, because the page pays for every
/// pointer of a table.
const COUNTRIES: &str = "\
    AD Andorra|AE United Arab Emirates|AF Afghanistan|AG Antigua and Barbuda|AI Anguilla|AL Albania|\
    AM Armenia|AO Angola|AQ Antarctica|AR Argentina|AS American Samoa|AT Austria|AU Australia|AW Aruba|\
    AX Åland|AZ Azerbaijan|BA Bosnia and Herzegovina|BB Barbados|BD Bangladesh|BE Belgium|BF Burkina Faso|\
    BG Bulgaria|BH Bahrain|BI Burundi|BJ Benin|BL Saint Barthélemy|BM Bermuda|BN Brunei|BO Bolivia|\
    BQ Caribbean Netherlands|BR Brazil|BS Bahamas|BT Bhutan|BW Botswana|BY Belarus|BZ Belize|CA Canada|\
    CC Cocos Islands|CD Congo (Kinshasa)|CF Central African Republic|CG Congo (Brazzaville)|CH Switzerland|\
    CI Ivory Coast|CK Cook Islands|CL Chile|CM Cameroon|CN China|CO Colombia|CR Costa Rica|CU Cuba|\
    CV Cape Verde|CW Curaçao|CX Christmas Island|CY Cyprus|CZ Czechia|DE Germany|DJ Djibouti|DK Denmark|\
    DM Dominica|DO Dominican Republic|DZ Algeria|EC Ecuador|EE Estonia|EG Egypt|EH Western Sahara|ER Eritrea|\
    ES Spain|ET Ethiopia|FI Finland|FJ Fiji|FK Falkland Islands|FM Micronesia|FO Faroe Islands|FR France|\
    GA Gabon|GB United Kingdom|GD Grenada|GE Georgia|GF French Guiana|GG Guernsey|GH Ghana|GI Gibraltar|\
    GL Greenland|GM Gambia|GN Guinea|GP Guadeloupe|GQ Equatorial Guinea|GR Greece|GS South Georgia|\
    GT Guatemala|GU Guam|GW Guinea-Bissau|GY Guyana|HK Hong Kong|HN Honduras|HR Croatia|HT Haiti|HU Hungary|\
    ID Indonesia|IE Ireland|IL Israel|IM Isle of Man|IN India|IO British Indian Ocean Territory|IQ Iraq|\
    IR Iran|IS Iceland|IT Italy|JE Jersey|JM Jamaica|JO Jordan|JP Japan|KE Kenya|KG Kyrgyzstan|KH Cambodia|\
    KI Kiribati|KM Comoros|KN Saint Kitts and Nevis|KP North Korea|KR South Korea|KW Kuwait|KY Cayman Islands|\
    KZ Kazakhstan|LA Laos|LB Lebanon|LC Saint Lucia|LI Liechtenstein|LK Sri Lanka|LR Liberia|LS Lesotho|\
    LT Lithuania|LU Luxembourg|LV Latvia|LY Libya|MA Morocco|MC Monaco|MD Moldova|ME Montenegro|\
    MF Saint Martin|MG Madagascar|MH Marshall Islands|MK North Macedonia|ML Mali|MM Myanmar|MN Mongolia|\
    MO Macau|MP Northern Mariana Islands|MQ Martinique|MR Mauritania|MS Montserrat|MT Malta|MU Mauritius|\
    MV Maldives|MW Malawi|MX Mexico|MY Malaysia|MZ Mozambique|NA Namibia|NC New Caledonia|NE Niger|\
    NF Norfolk Island|NG Nigeria|NI Nicaragua|NL Netherlands|NO Norway|NP Nepal|NR Nauru|NU Niue|\
    NZ New Zealand|OM Oman|PA Panama|PE Peru|PF French Polynesia|PG Papua New Guinea|PH Philippines|\
    PK Pakistan|PL Poland|PM Saint Pierre and Miquelon|PN Pitcairn|PR Puerto Rico|PS Palestine|PT Portugal|\
    PW Palau|PY Paraguay|QA Qatar|RE Réunion|RO Romania|RS Serbia|RU Russia|RW Rwanda|SA Saudi Arabia|\
    SB Solomon Islands|SC Seychelles|SD Sudan|SE Sweden|SG Singapore|SH Saint Helena and Ascension|\
    SI Slovenia|SJ Svalbard|SK Slovakia|SL Sierra Leone|SM San Marino|SN Senegal|SO Somalia|SR Suriname|\
    SS South Sudan|ST Sao Tome and Principe|SV El Salvador|SX Sint Maarten|SY Syria|SZ Eswatini|\
    TC Turks and Caicos Islands|TD Chad|TF French Southern Lands|TG Togo|TH Thailand|TJ Tajikistan|TK Tokelau|\
    TL Timor-Leste|TM Turkmenistan|TN Tunisia|TO Tonga|TR Turkey|TT Trinidad and Tobago|TV Tuvalu|TW Taiwan|\
    TZ Tanzania|UA Ukraine|UG Uganda|UM United States islands|US United States|UY Uruguay|UZ Uzbekistan|\
    VC Saint Vincent and the Grenadines|VE Venezuela|VG British Virgin Islands|VI US Virgin Islands|\
    VN Vietnam|VU Vanuatu|WF Wallis and Futuna|WS Samoa|XK Kosovo|YE Yemen|YT Mayotte|ZA South Africa|\
    ZM Zambia|ZW Zimbabwe|";

/// The name of a country or territory by its code, which is matched exactly.
#[must_use]
pub fn country(code: &str) -> Option<&'static str> {
    entries().find(|(known, _)| *known == code).map(|(_, name)| name)
}

fn entries() -> impl Iterator<Item = (&'static str, &'static str)> {
    COUNTRIES.split_terminator('|').filter_map(|entry| entry.split_once(' '))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::towns;
    use std::collections::BTreeSet;

    #[test]
    fn codes_are_sorted_and_names_unique() {
        let codes: Vec<_> = entries().map(|(code, _)| code).collect();
        assert!(codes.is_sorted_by(|a, b| a < b));
        assert!(codes.iter().all(|c| c.len() == 2 && c.chars().all(|c| c.is_ascii_uppercase())));
        let names: BTreeSet<_> = entries().map(|(_, name)| name).collect();
        assert_eq!(names.len(), codes.len());
        assert!(names.iter().all(|name| name.len() > 2 && *name == name.trim()));
        assert_eq!(COUNTRIES.matches('|').count(), codes.len());
    }

    #[test]
    fn exactly_the_codes_of_the_towns_are_named() {
        let named: BTreeSet<_> = entries().map(|(code, _)| code).collect();
        let used: BTreeSet<_> = towns().iter().map(|town| town.country).collect();
        assert_eq!(named, used);
    }

    #[test]
    fn names_are_found_by_code_alone() {
        assert_eq!(country("CI"), Some("Ivory Coast"));
        assert_eq!(country("AX"), Some("Åland"));
        assert_eq!(country("ZW"), Some("Zimbabwe"));
        for unknown in ["", "Z", "zw", "ZZ", "Zimbabwe", "AD Andorra"] {
            assert_eq!(country(unknown), None);
        }
    }
}
