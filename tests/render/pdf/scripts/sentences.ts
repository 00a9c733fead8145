// Nothing arrives; short invented sentences leave, one set for each script, with the traps every letter holds.
import type { Direction } from '../../../../src/render/block.js';

/** Test text by a writer who is no native speaker: never a translation to ship. */
export type Sample = {
  readonly lang: string;
  readonly dir: Direction;
  /** Face that draws the letters of the script. */
  readonly file: string;
  readonly sentences: readonly string[];
  /** Share of characters that pdfjs gives in the right order; 1 in every left-to-right script. */
  readonly share: number;
};

const ltr = (lang: string, file: string, ...sentences: string[]): Sample => ({
  lang,
  dir: 'ltr',
  file,
  sentences,
  share: 1,
});
const rtl = (lang: string, file: string, share: number, ...sentences: string[]): Sample => ({
  lang,
  dir: 'rtl',
  file,
  sentences,
  share,
});

export const samples: readonly Sample[] = [
  ltr('vi', 'NotoSans', 'Cơ thể bạn đang thiếu sắt.', 'Hãy ăn đậu và rau cùng với chanh.'),
  ltr('uk', 'NotoSans', 'У вашому організмі мало заліза.', 'Їжте сочевицю з лимоном.'),
  rtl(
    'ar',
    'Vazirmatn',
    0.98,
    'مخزون الحديد في جسمك منخفض.',
    'تناول العدس مع الليمون، ثم اتصل بنا.',
  ),
  rtl('fa', 'Vazirmatn', 0.98, 'ذخیره آهن بدن شما کم است.', 'می‌توانید فردا به ما زنگ بزنید.'),
  rtl(
    'ur',
    'NotoNastaliqUrdu',
    0.98,
    'آپ کے جسم میں آئرن کم ہے۔',
    'دال اور سبزی لیموں کے ساتھ کھائیں۔',
  ),
  rtl(
    'ur-Arab',
    'Vazirmatn',
    0.98,
    'آپ کے جسم میں آئرن کم ہے۔',
    'دال اور سبزی لیموں کے ساتھ کھائیں۔',
  ),
  rtl('he', 'NotoSansHebrew', 0.99, 'מאגר הברזל בגוף שלך נמוך.', 'אכלו עדשים וירקות עם לימון.'),
  ltr(
    'hi',
    'NotoSansDevanagari',
    'आपके शरीर में लोहे की कमी है।',
    'दाल और हरी सब्ज़ी नींबू के साथ खाएँ।',
    'क्लिनिक में यह पत्र साथ लाइए।',
  ),
  ltr(
    'bn',
    'NotoSansBengali',
    'আপনার শরীরে লোহার অভাব আছে।',
    'ডাল ও শাক লেবুর সঙ্গে খান।',
    'ক্লিনিকে আসার সময় এই চিঠি আনুন।',
  ),
  ltr('pa', 'NotoSansGurmukhi', 'ਤੁਹਾਡੇ ਸਰੀਰ ਵਿੱਚ ਲੋਹੇ ਦੀ ਘਾਟ ਹੈ।', 'ਦਾਲ ਅਤੇ ਸਾਗ ਨਿੰਬੂ ਨਾਲ ਖਾਓ।'),
  ltr('ta', 'NotoSansTamil', 'உங்கள் உடலில் இரும்புச்சத்து குறைவு.', 'பருப்பும் கீரையும் சாப்பிடுங்கள்.'),
  ltr('th', 'NotoSansThai', 'ร่างกายของคุณมีธาตุเหล็กต่ำ', 'กินถั่วและผักกับน้ำมะนาว'),
  ltr('km', 'NotoSansKhmer', 'រាងកាយរបស់អ្នកមានជាតិដែកតិច។', 'សូមញ៉ាំសណ្ដែក និងបន្លែ។'),
  ltr('am', 'NotoSansEthiopic', 'በሰውነትዎ ውስጥ ያለው ብረት ዝቅተኛ ነው።', 'ምስርና ጎመን ከሎሚ ጋር ይብሉ።'),
  ltr('zh-Hant', 'NotoSansTC', '您體內的鐵儲備偏低。', '請把扁豆和蔬菜與檸檬一起吃，好嗎？'),
  // Words only: between Hangul words this face has a space of its own width, where ours stays the plain one.
  ltr('ko', 'NotoSansKR', '철분이부족합니다.', '레몬과함께드세요.'),
  ltr('zh-Hans', 'NotoSansSC', '您体内的铁储备偏低。', '请把扁豆和蔬菜与柠檬一起吃，好吗？'),
];

/** What breaks most often; the phone number is in the range that Ofcom keeps for drama. */
export const traps = [
  '12.5 µg/L',
  '30–400',
  '<5',
  '35 %',
  '+44 113 496 0000',
  '2026-01-05',
  '[30–400]',
  '(12.5 g/L)',
] as const;
